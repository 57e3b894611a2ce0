package tallywell.desk;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What speaks for the order of several exports, and what against it, in words. */
final class OrderEvidence {
    private static final int DECIMALS = 3;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("H:mm:ss", Locale.ROOT);
    private static final Pattern BEFORE = Pattern.compile("(?i)before");
    private static final Pattern AFTER = Pattern.compile("(?i)after");

    private OrderEvidence() {}

    /** Of readings in the order that was guessed; empty for fewer than two. */
    static String words(List<Intake> readings, Shown shown) {
        if (readings.size() < 2) {
            return "";
        }
        List<String> agree = new ArrayList<>();
        List<String> against = new ArrayList<>();
        names(readings).ifPresent(fits -> (fits ? agree : against).add("the names"));
        List<LocalDateTime> moments = readings.stream()
                .flatMap(each -> each.block().readAt().stream())
                .toList();
        if (moments.size() == readings.size() && moments.stream().distinct().count() == moments.size()) {
            String times = moments.stream()
                    .map(TIME::format)
                    .collect(Collectors.joining(", ", "the times in the files (", ")"));
            (ascending(moments) ? agree : against).add(times);
        }
        return means(readings, shown)
                + (agree.isEmpty() ? "" : "; " + String.join(" and ", agree) + " agree")
                + (against.isEmpty()
                        ? "."
                        : ". But " + String.join(" and ", against) + " say otherwise: please check.");
    }

    private static String means(List<Intake> readings, Shown shown) {
        return "The mean absorbance goes from "
                + readings.stream()
                        .map(each -> each.mean().isPresent()
                                ? shown.fixed(each.mean().getAsDouble(), DECIMALS)
                                : "–")
                        .collect(Collectors.joining(" to "));
    }

    private static boolean ascending(List<LocalDateTime> moments) {
        for (int i = 1; i < moments.size(); i++) {
            if (!moments.get(i).isAfter(moments.get(i - 1))) {
                return false;
            }
        }
        return true;
    }

    /** Whether names with before and after in them fit; empty where they do not say. */
    private static Optional<Boolean> names(List<Intake> readings) {
        boolean firstBefore = BEFORE.matcher(readings.get(0).name()).find();
        boolean firstAfter = AFTER.matcher(readings.get(0).name()).find();
        List<Intake> rest = readings.subList(1, readings.size());
        boolean restBefore =
                rest.stream().anyMatch(each -> BEFORE.matcher(each.name()).find());
        boolean restAfter =
                rest.stream().allMatch(each -> AFTER.matcher(each.name()).find());
        if (firstBefore == firstAfter || restBefore == restAfter) {
            return Optional.empty();
        }
        return Optional.of(firstBefore && restAfter);
    }
}
