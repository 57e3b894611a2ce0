package tallywell.across;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tallywell.notice.InputException;

/**
 * Two runs of the same samples side by side.
 *
 * @param first run that was first
 * @param second run that repeats it
 * @param rows one a sample or control and analyte that both have
 * @param onlyOne what one of them has and the other has not
 * @param shared in words, the sources that counted as the same on both plates
 */
public record Comparison(
        String first, String second, List<ComparedResult> rows, List<Found> onlyOne, Set<String> shared) {
    /** Keeps copies that cannot change. */
    public Comparison {
        rows = List.copyOf(rows);
        onlyOne = List.copyOf(onlyOne);
        shared = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(shared));
    }

    /**
     * Compares.
     *
     * @throws InputException if the runs cannot be compared
     */
    public static Comparison of(RunResults first, RunResults second) throws InputException {
        List<ComparedResult> rows = new ArrayList<>();
        List<Found> onlyOne = new ArrayList<>();
        for (Linking.Link link : Linking.of(List.of(first, second))) {
            if (link.found().size() == 2) {
                rows.add(ComparedResult.of(link.found().get(0), link.found().get(1), link.id()));
            } else {
                onlyOne.addAll(link.found());
            }
        }
        Set<String> shared = new LinkedHashSet<>();
        rows.forEach(row -> shared.addAll(row.shared()));
        return new Comparison(first.run(), second.run(), rows, onlyOne, shared);
    }

    /** How many rows went that way. */
    public long count(ComparedResult.Agreement agreement) {
        return rows.stream().filter(each -> each.agreement() == agreement).count();
    }

    /** The comparison in one sentence. */
    public String sentence() {
        long agree = count(ComparedResult.Agreement.AGREE);
        long differ = count(ComparedResult.Agreement.DIFFER);
        long judged = agree + differ;
        if (judged == 0) {
            return "None of " + rows.size() + " results in common could be judged.";
        }
        // One in twenty is outside by chance where nothing is wrong.
        return agree + " of " + judged + " results agree within the expanded uncertainty of the difference (95 %), "
                + differ + " differ, where by chance alone one in twenty would. "
                + (rows.size() - judged) + " not judged.";
    }
}
