package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.files.SampleListReader;
import tallywell.files.SampleListWriter;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** The samples of a run as a table to type into, what is expected of them for planning included. */
public final class SampleTable {
    private static final int EXPECTED = SampleRows.COLUMNS.indexOf("expected");

    private SampleTable() {}

    /** One row a slot of the layout. Reads the list's file: not for the event thread. */
    public static List<List<String>> of(RunDraft draft, Shown shown) throws InputException {
        List<Integer> slots = draft.layout()
                .map(each -> each.value().slots())
                .orElseThrow(() -> new IllegalArgumentException("draft must have a layout but was without"));
        List<List<String>> rows = SampleRows.of(slots, draft.sampleList(), shown);
        if (draft.samples().isPresent()) {
            Map<String, String> expected = expected(draft.samples().get());
            rows.forEach(row -> row.set(EXPECTED, expected.getOrDefault(row.get(0), "")));
        }
        return rows;
    }

    private static Map<String, String> expected(Origin<SampleList> origin) throws InputException {
        Map<String, String> expected = new HashMap<>();
        if (origin.file().isPresent()) {
            collect(origin.file().get(), expected);
        } else if (origin.text().isPresent()) {
            try {
                Path file = Files.createTempFile("tallywell-samples", ".csv");
                Files.writeString(file, origin.text().get());
                collect(file, expected);
                Files.delete(file);
            } catch (IOException e) {
                throw new InputException(
                        Place.nowhere(), "the typed samples cannot be laid out (" + e.getMessage() + ")", e);
            }
        }
        return expected;
    }

    private static void collect(Path file, Map<String, String> into) throws InputException {
        for (WantedSample each : new SampleListReader().readWanted(file)) {
            into.put(Integer.toString(each.sample().slot()), each.expected());
        }
    }

    /**
     * The samples that the rows make, with what is expected of them.
     *
     * @param name as the user is shown it
     * @throws InputException naming slot and column, what was found and what would be right
     */
    public static Origin<SampleList> list(String name, List<List<String>> rows, Shown shown) throws InputException {
        SampleList list = SampleRows.list(rows, shown);
        Map<String, String> expected = new HashMap<>();
        for (List<String> row : rows) {
            if (!row.get(EXPECTED).isBlank()) {
                expected.put(row.get(0), shown.pointed(row.get(EXPECTED).strip()));
            }
        }
        return expected.isEmpty()
                ? Origin.unsaved(name, list)
                : new Origin<>(name, Optional.empty(), list, Optional.of(text(list, expected)));
    }

    private static String text(SampleList list, Map<String, String> expected) {
        List<String> lines = new SampleListWriter().text(list).lines().toList();
        StringBuilder text = new StringBuilder(lines.get(0)).append(",expected\n");
        List<Integer> slots = List.copyOf(list.bySlot().keySet());
        for (int i = 0; i < slots.size(); i++) {
            String cell = expected.getOrDefault(Integer.toString(slots.get(i)), "");
            text.append(lines.get(i + 1))
                    .append(",\"")
                    .append(cell.replace("\"", "\"\""))
                    .append("\"\n");
        }
        return text.toString();
    }
}
