package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.method.SampleList;
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
    private record Column(String name, boolean always, Function<Sample, String> cell) {}

    private static final List<Column> COLUMNS = List.of(
            new Column("slot", true, sample -> Integer.toString(sample.slot())),
            new Column("sample", true, Sample::name),
            new Column("dilution", true, sample -> sample.dilution().toString()),
            new Column("volume", false, sample -> number(sample.volumeUl(), " µL")),
            new Column(
                    "mass_g",
                    false,
                    sample -> sample.solid()
                            .map(solid -> Numbers.plain(solid.massG()))
                            .orElse("")),
            new Column(
                    "extract_mL",
                    false,
                    sample -> sample.solid()
                            .map(solid -> Numbers.plain(solid.extractMl()))
                            .orElse("")),
            new Column("density_g_per_mL", false, sample -> number(sample.densityGPerMl(), "")),
            new Column("group", false, Sample::group),
            new Column("id", false, Sample::id),
            new Column("note", false, Sample::note),
            new Column("treatment", false, sample -> sample.treatment().word()));

    /** The text of a sample list; columns that hold nothing are left out. */
    public String text(SampleList list) {
        List<Sample> samples = new ArrayList<>(list.bySlot().values());
        List<Column> columns = COLUMNS.stream()
                .filter(column -> column.always()
                        || samples.stream()
                                .anyMatch(sample -> !column.cell().apply(sample).isEmpty()))
                .toList();
        StringBuilder text =
                new StringBuilder(columns.stream().map(Column::name).collect(Collectors.joining(",")));
        text.append('\n');
        for (Sample sample : samples) {
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

    private static String quoted(String cell) {
        boolean needs = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';');
        return needs ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
