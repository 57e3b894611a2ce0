package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
    private static final int DILUTION = SampleRows.DILUTION;
    private static final int EXPECTED = SampleRows.COLUMNS.indexOf("expected");

    private SampleTable() {}

    /**
     * One row a slot of the layout; empty ones as long as there is no list, since then every slot counts. Reads the list's
     * file: not for the event thread.
     */
    public static List<List<String>> of(RunDraft draft, Shown shown) throws InputException {
        List<Integer> slots = draft.layout()
                .map(each -> each.value().slots())
                .orElseThrow(() -> new IllegalArgumentException("draft must have a layout but was without"));
        if (draft.samples().isEmpty()) {
            return SampleRows.of(slots, SampleList.of(List.of()), shown);
        }
        Origin<SampleList> origin = draft.samples().get();
        List<List<String>> rows = SampleRows.of(slots, origin.value(), shown);
        Map<String, WantedSample> wanted = wanted(origin);
        for (List<String> row : rows) {
            WantedSample of = wanted.get(row.get(0));
            if (of != null) {
                row.set(EXPECTED, of.expected());
                row.set(DILUTION, of.hasDilution() ? row.get(DILUTION) : "");
            }
        }
        return rows;
    }

    /** What the text of the list says of each slot; nothing where the list is no text yet. */
    private static Map<String, WantedSample> wanted(Origin<SampleList> origin) throws InputException {
        Map<String, WantedSample> wanted = new HashMap<>();
        if (origin.file().isPresent()) {
            collect(origin.file().get(), wanted);
        } else if (origin.text().isPresent()) {
            try {
                Path file = Files.createTempFile("tallywell-samples", ".csv");
                Files.writeString(file, origin.text().get());
                collect(file, wanted);
                Files.delete(file);
            } catch (IOException e) {
                throw new InputException(
                        Place.nowhere(), "the typed samples cannot be laid out (" + e.getMessage() + ")", e);
            }
        }
        return wanted;
    }

    private static void collect(Path file, Map<String, WantedSample> into) throws InputException {
        for (WantedSample each : new SampleListReader().readWanted(file)) {
            into.put(Integer.toString(each.sample().slot()), each);
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
        boolean anyExpected = rows.stream().anyMatch(row -> !row.get(EXPECTED).isBlank());
        if (!anyExpected) {
            return Origin.unsaved(name, list);
        }
        List<WantedSample> wanted = new ArrayList<>();
        for (List<String> row : rows) {
            // Where no dilution was typed there is none yet, so that one can be planned.
            boolean diluted = !row.get(DILUTION).isBlank();
            String expected = shown.pointed(row.get(EXPECTED).strip());
            list.in(Integer.parseInt(row.get(0)))
                    .ifPresent(sample -> wanted.add(new WantedSample(sample, diluted, expected, "")));
        }
        String text = new SampleListWriter().wanted(wanted);
        return new Origin<>(name, Optional.empty(), list, Optional.of(text));
    }
}
