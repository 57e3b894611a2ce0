package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/**
 * Known plates in random forms: not one reading may come back wrong, and at most 5 % of the files with one meaning may
 * be refused. {@code -Dtallywell.renderings=N} runs more, {@code -Dtallywell.rendering=SEED} shows one.
 */
class RenderingTest {
    private static final int COUNT = Integer.getInteger("tallywell.renderings", 2000);
    private static final Long ONE = Long.getLong("tallywell.rendering");

    @TempDir
    private Path folder;

    @Test
    void randomRenderingsAreReadRightOrRefused() throws Exception {
        List<String> wrong = new ArrayList<>();
        List<String> refused = new ArrayList<>();
        int single = 0;
        for (long seed = ONE == null ? 1 : ONE; seed <= (ONE == null ? COUNT : ONE); seed++) {
            Rendering rendering = new Rendering(seed);
            Path file = rendering.write(folder);
            String name = seed + " (" + rendering.form + ", " + rendering.carrier + ")";
            single += rendering.ambiguous ? 0 : 1;
            try {
                Map<String, String> found = flat(new Importer().read(file, Choice.none()), rendering.truth);
                String difference = difference(rendering.truth, found);
                if (rendering.ambiguous) {
                    wrong.add(name + ": ambiguous, but read");
                } else if (!difference.isEmpty()) {
                    wrong.add(name + ": " + difference);
                }
            } catch (InputException e) {
                if (!rendering.ambiguous) {
                    refused.add(name + ": " + e.getMessage().replace(folder.toString(), ""));
                }
            }
        }
        assertThat(wrong).as("silently wrong").isEmpty();
        assertThat(refused).as("refused of %d with one meaning", single).hasSizeLessThanOrEqualTo(single / 20);
    }

    /** Readings by the same keys as the truth: only names that the truth knows count. */
    private static Map<String, String> flat(Export export, Map<String, String> truth) {
        boolean plates = truth.keySet().stream().anyMatch(key -> !key.startsWith("|"));
        boolean wavelengths = truth.keySet().stream().anyMatch(key -> !key.split("[|]", -1)[1].isEmpty());
        Map<String, String> found = new TreeMap<>();
        for (Block block : export.blocks()) {
            ReadingSeries series = block.series();
            String nm = wavelengths && block.wavelengthNm().isPresent()
                    ? "" + (int) block.wavelengthNm().getAsDouble()
                    : "";
            for (Well well : series.wells()) {
                for (int i = 0; i < series.size(well); i++) {
                    String time = series.isTimed() ? time(series.timeS(well, i)) : "";
                    Mark mark = series.mark(well, i);
                    String key = (plates ? block.plate() : "") + "|" + nm + "|" + time + "|" + well;
                    String before =
                            found.put(key, mark == Mark.NONE ? number(series.absorbance(well, i)) : mark.word());
                    if (before != null) {
                        found.put(key + " again", before);
                    }
                }
            }
        }
        return found;
    }

    /** A workbook does not keep the sign of zero. */
    private static String number(double value) {
        return "" + (value + 0.0);
    }

    private static String time(double seconds) {
        return seconds == (int) seconds ? "" + (int) seconds : "" + seconds;
    }

    private static String difference(Map<String, String> truth, Map<String, String> found) {
        Map<String, String> wanted = new TreeMap<>();
        truth.forEach((key, value) -> {
            String[] parts = key.split("[|]", -1);
            String time = parts[2].isEmpty() ? "" : time(Double.parseDouble(parts[2]));
            boolean word = value.equals("over") || value.equals("missing");
            wanted.put(
                    parts[0] + "|" + parts[1] + "|" + time + "|" + parts[3],
                    word ? value : number(Double.parseDouble(value)));
        });
        if (wanted.equals(found)) {
            return "";
        }
        for (Map.Entry<String, String> each : wanted.entrySet()) {
            if (!each.getValue().equals(found.get(each.getKey()))) {
                return each.getKey() + " is " + each.getValue() + " but was " + found.get(each.getKey()) + " (of "
                        + wanted.size() + ", found " + found.size() + ")";
            }
        }
        return "found " + found.size() + " readings of " + wanted.size() + ", such as "
                + found.keySet().stream()
                        .filter(key -> !wanted.containsKey(key))
                        .findFirst();
    }
}
