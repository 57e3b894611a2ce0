package tallywell.files;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.quantity.CellText;
import tallywell.quantity.Numbers;

/** Writes sample lists as CSV (RFC 4180); {@link SampleListReader} reads the same list back. */
public final class SampleListWriter {
    /**
     * A column of the list.
     *
     * @param name its heading
     * @param always whether it stands there even if empty throughout
     * @param cell what a sample has in it
     */
    private record Column(String name, boolean always, Function<WantedSample, String> cell) {
        static Column of(String name, boolean always, Function<Sample, String> cell) {
            return new Column(name, always, wanted -> cell.apply(wanted.sample()));
        }
    }

    private static final List<Column> COLUMNS = List.of(
            Column.of("slot", true, sample -> Integer.toString(sample.slot())),
            Column.of("sample", true, Sample::name),
            new Column(
                    "dilution",
                    true,
                    wanted -> wanted.hasDilution() ? wanted.sample().dilution().toString() : ""),
            Column.of("volume", false, sample -> number(sample.volumeUl(), " µL")),
            Column.of(
                    "mass_g",
                    false,
                    sample -> sample.solid()
                            .map(solid -> Numbers.plain(solid.massG()))
                            .orElse("")),
            Column.of(
                    "extract_mL",
                    false,
                    sample -> sample.solid()
                            .map(solid -> Numbers.plain(solid.extractMl()))
                            .orElse("")),
            Column.of("density_g_per_mL", false, sample -> number(sample.densityGPerMl(), "")),
            Column.of("group", false, Sample::group),
            Column.of("id", false, Sample::id),
            Column.of("note", false, Sample::note),
            Column.of("treatment", false, sample -> sample.treatment().word()),
            new Column("expected", false, WantedSample::expected));

    /** The text of a sample list; columns that hold nothing are left out. */
    public String text(SampleList list) {
        return wanted(list.bySlot().values().stream().map(WantedSample::planned).toList());
    }

    /** The text of a list for planning, where a dilution may still be open and something may be expected. */
    public String wanted(List<WantedSample> samples) {
        List<Column> columns = COLUMNS.stream()
                .filter(column -> column.always()
                        || samples.stream()
                                .anyMatch(sample -> !column.cell().apply(sample).isEmpty()))
                .toList();
        StringBuilder text =
                new StringBuilder(columns.stream().map(Column::name).collect(Collectors.joining(",")));
        text.append('\n');
        for (WantedSample sample : samples) {
            text.append(columns.stream()
                            .map(column -> quoted(column.cell().apply(sample)))
                            .collect(Collectors.joining(",")))
                    .append('\n');
        }
        return text.toString();
    }

    private static String number(OptionalDouble value, String unit) {
        return value.isPresent() ? Numbers.plain(value.getAsDouble()) + unit : "";
    }

    private static String quoted(String meant) {
        String cell = CellText.shown(HiddenCharacters.without(meant));
        boolean needs = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';');
        return needs ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
