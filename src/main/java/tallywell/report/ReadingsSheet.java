package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tallywell.plate.Content;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Ref;
import tallywell.workup.StepAnalysis;
import tallywell.workup.Taken;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/** Writes the sheet Readings: every reading in exactly one cell, wells down, readings across, times above. */
final class ReadingsSheet {
    private static final Look READING = Looks.INPUT.format(Looks.ABSORBANCE);
    private static final Look MARK = Looks.INPUT.face(Look.Face.BAD).align(Look.Align.RIGHT);
    private static final Look TIME = Looks.NOTE.format("0.##").align(Look.Align.RIGHT);
    private static final Look ENTRY = Looks.HEAD.fill(Look.Fill.NONE);
    private static final int MOST_NAMED = 6;

    private final Draft draft;
    private final Sheet sheet;
    private final ReadingGrid grid;
    private final List<Taken> taken;

    private ReadingsSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
        this.grid = draft.readings();
        this.taken = draft.analysis().assay().allReadings();
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new ReadingsSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(0);
        sheet.text(0, "Readings: absorbance as exported", Looks.SECTION);
        entries();
        parts();
        fileTimes();
        for (int i = 0; i < grid.timeRows(); i++) {
            times(i);
        }
        heads();
        for (Well well : grid.wells()) {
            readings(well);
        }
        sheet.freeze(grid.headRow() + 1, ReadingGrid.FIRST_COLUMN);
        sheet.widths(7, 30);
        for (int i = 0; i < taken.size(); i++) {
            boolean single = grid.endColumn(i) - grid.firstColumn(i) == 1;
            double width =
                    single ? Math.min(30, Math.max(10, taken.get(i).name().length() + 2)) : 9;
            for (int column = grid.firstColumn(i); column < grid.endColumn(i); column++) {
                sheet.width(column, width);
            }
        }
        boolean wide = grid.columns() > 5;
        sheet.print(wide, false, grid.headRow() + 1, draft.report().run());
        if (grid.columns() > 18) {
            // A long series goes on over several pages at a size that can be read, with the wells on each.
            sheet.printWide(ReadingGrid.FIRST_COLUMN, grid.headRow() + 1);
        }
    }

    private void entries() throws IOException {
        sheet.row(1);
        sheet.text(1, "File", Looks.LABEL);
        for (int i = 0; i < taken.size(); i++) {
            int end = Math.min(grid.endColumn(i) - 1, grid.firstColumn(i) + 11);
            boolean single = end == grid.firstColumn(i);
            sheet.banner(grid.firstColumn(i), end, taken.get(i).name(), single ? ENTRY.align(Look.Align.RIGHT) : ENTRY);
        }
    }

    private void parts() throws IOException {
        sheet.row(2);
        sheet.text(1, "Belongs to", Looks.LABEL);
        List<Set<Integer>> parts = new ArrayList<>();
        for (int i = 0; i < grid.columns(); i++) {
            parts.add(new TreeSet<>());
        }
        for (StepAnalysis step : draft.analysis().steps()) {
            for (WellResult well : step.wells()) {
                collect(parts, well.trace().readings().baseline(), 0);
                collect(parts, well.trace().readings().after(), step.number());
            }
        }
        int path = taken.size() - draft.analysis().assay().readings().size();
        for (int i = 0; i < grid.columns() - path; i++) {
            sheet.text(ReadingGrid.FIRST_COLUMN + i, words(parts.get(i)), Looks.NOTE.align(Look.Align.RIGHT));
        }
        for (int i = 0; i < path; i++) {
            int column = grid.firstColumn(taken.size() - path + i);
            sheet.text(column, i == 0 ? "light path, peak" : "light path, beside", Looks.NOTE.align(Look.Align.RIGHT));
        }
    }

    private void collect(List<Set<Integer>> parts, List<WellReadings.Point> points, int part) {
        for (WellReadings.Point point : points) {
            parts.get(grid.column(point.ref()) - ReadingGrid.FIRST_COLUMN).add(part);
        }
    }

    private String words(Set<Integer> parts) {
        boolean one = draft.analysis().steps().size() == 1;
        if (parts.size() > 1) {
            return "mixed";
        }
        return parts.stream()
                .map(part -> part == 0 ? "before" : one ? "after" : "after " + part)
                .collect(Collectors.joining(" / "));
    }

    private void fileTimes() throws IOException {
        sheet.row(ReadingGrid.FIRST_TIME_ROW - 1);
        sheet.text(1, "Time in the file (s)", Looks.LABEL);
        for (int i = 0; i < taken.size(); i++) {
            ReadingSeries series = taken.get(i).series();
            for (int index = 0; index < grid.endColumn(i) - grid.firstColumn(i); index++) {
                int at = index;
                double[] times = series.isTimed()
                        ? series.wells().stream()
                                .filter(well -> series.size(well) > at)
                                .mapToDouble(well -> series.timeS(well, at))
                                .distinct()
                                .limit(2)
                                .toArray()
                        : new double[0];
                if (times.length == 1) {
                    sheet.number(grid.firstColumn(i) + index, times[0], TIME);
                }
            }
        }
    }

    private void times(int timeRow) throws IOException {
        sheet.row(ReadingGrid.FIRST_TIME_ROW + timeRow);
        String of = grid.timeRows() == 1 ? "" : ", " + of(grid.wellsOf(timeRow));
        sheet.text(1, "t from the trigger (s)" + of, Looks.LABEL);
        for (int i = 0; i < grid.columns(); i++) {
            double time = grid.time(timeRow, ReadingGrid.FIRST_COLUMN + i);
            if (!Double.isNaN(time)) {
                sheet.number(ReadingGrid.FIRST_COLUMN + i, time, TIME);
            }
        }
    }

    /** The wells of a row of times: by column where it holds whole columns, as with a staggered trigger. */
    private static String of(List<Well> wells) {
        List<Integer> columns = wells.stream()
                .map(well -> well.column() + 1)
                .distinct()
                .sorted()
                .toList();
        if (columns.size() == 1) {
            return "column " + columns.get(0);
        }
        String named = wells.stream().limit(MOST_NAMED).map(Well::toString).collect(Collectors.joining(" "));
        return wells.size() > MOST_NAMED ? named + " …" : named;
    }

    private void heads() throws IOException {
        sheet.row(grid.headRow());
        sheet.text(0, "Well", Looks.HEAD);
        sheet.text(1, "Holds", Looks.HEAD);
        for (int i = 0; i < taken.size(); i++) {
            for (int column = grid.firstColumn(i); column < grid.endColumn(i); column++) {
                sheet.number(column, column - grid.firstColumn(i) + 1, Looks.HEAD.align(Look.Align.RIGHT));
            }
        }
    }

    private void readings(Well well) throws IOException {
        sheet.row(grid.row(well));
        sheet.text(0, well.toString(), Looks.TEXT);
        sheet.text(1, holds(well), Looks.NOTE);
        for (int i = 0; i < taken.size(); i++) {
            ReadingSeries series = taken.get(i).series();
            for (int index = 0; index < series.size(well); index++) {
                int column = grid.column(new Ref(i, index));
                Mark mark = series.mark(well, index);
                if (mark == Mark.NONE) {
                    sheet.number(column, series.absorbance(well, index), READING);
                } else {
                    sheet.text(column, mark.word(), MARK);
                }
            }
        }
    }

    private String holds(Well well) {
        if (!draft.analysis().assay().layout().format().holds(well)) {
            return "";
        }
        Content content = draft.analysis().assay().layout().at(well);
        if (content instanceof Content.Unused) {
            return "not used";
        }
        if (content instanceof Content.Sample sample) {
            return "slot " + sample.slot();
        }
        if (content instanceof Content.Standard standard) {
            return standard.level().quantities().stream()
                    .map(quantity -> Numbers.plain(quantity.value()) + " " + quantity.unit())
                    .distinct()
                    .collect(Collectors.joining(", "));
        }
        return content.role() + " " + content.word();
    }
}
