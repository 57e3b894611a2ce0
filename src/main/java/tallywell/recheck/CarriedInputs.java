package tallywell.recheck;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import tallywell.report.Carried;
import tallywell.report.CarriedFile;
import tallywell.report.InputsSheet;
import tallywell.report.Packing;

/** Reads the sheet Inputs: what a workbook carries so that it can be made again. */
public final class CarriedInputs {
    private final CellSheet sheet;
    private final List<CarriedRun> runs = new ArrayList<>();
    private final Map<Integer, byte[]> known = new HashMap<>();
    private final List<Carried.Setting> settings = new ArrayList<>();
    private final List<CarriedFile> files = new ArrayList<>();
    private final List<CarriedRun.Lost> lost = new ArrayList<>();
    private Optional<String> run = Optional.empty();

    private CarriedInputs(CellSheet sheet) {
        this.sheet = sheet;
    }

    /** The runs that a workbook carries; empty if it carries none. */
    public static List<CarriedRun> of(WorkbookCells book) {
        Optional<CellSheet> sheet = book.sheet(InputsSheet.NAME);
        if (sheet.isEmpty()) {
            return List.of();
        }
        CarriedInputs inputs = new CarriedInputs(sheet.get());
        inputs.read();
        return List.copyOf(inputs.runs);
    }

    private void read() {
        SortedSet<Integer> rows = sheet.rows();
        int last = rows.isEmpty() ? -1 : rows.last();
        for (int row = 0; row <= last; row++) {
            switch (sheet.text(row, 0)) {
                case InputsSheet.RUN -> {
                    end();
                    run = Optional.of(sheet.text(row, 1));
                }
                case InputsSheet.SETTING -> settings.add(new Carried.Setting(sheet.text(row, 1), sheet.text(row, 2)));
                case InputsSheet.FILE -> row += file(row);
                default -> {
                    // Title, heads, and what people may have written between.
                }
            }
        }
        end();
    }

    private void end() {
        run.ifPresent(name -> runs.add(new CarriedRun(name, new Carried(settings, files), lost)));
        settings.clear();
        files.clear();
        lost.clear();
    }

    /** Reads a file and says how many rows it takes below its first. */
    private int file(int row) {
        int below = sheet.rows().last() - row;
        int rows = (int) Math.max(0, Math.min(below, sheet.at(row, 7).number()));
        String packing = sheet.text(row, 5);
        try {
            byte[] bytes = bytes(row, rows, packing);
            known.put((int) sheet.at(row, 1).number(), bytes);
            files.add(new CarriedFile(
                    sheet.text(row, 2), sheet.text(row, 3), sheet.text(row, 4), sheet.text(row, 8), bytes));
        } catch (IOException e) {
            lost.add(new CarriedRun.Lost(
                    sheet.text(row, 2),
                    sheet.text(row, 3),
                    sheet.text(row, 4),
                    sheet.text(row, 8),
                    String.valueOf(e.getMessage())));
        }
        return rows;
    }

    private byte[] bytes(int row, int rows, String packing) throws IOException {
        if (packing.startsWith(InputsSheet.SAME_AS)) {
            String number = packing.substring(InputsSheet.SAME_AS.length());
            byte[] before = number.matches("[0-9]{1,9}") ? known.get(Integer.valueOf(number)) : null;
            if (before == null) {
                throw new IOException("it is said to be the same as one that is not there");
            }
            return before;
        }
        if (packing.equals(InputsSheet.LEFT_OUT)) {
            throw new IOException("it was too large to be carried");
        }
        Packing known = Packing.of(packing)
                .orElseThrow(() -> new IOException("its packing '" + packing + "' is unknown to this version"));
        List<String> texts = new ArrayList<>();
        for (int i = 1; i <= rows; i++) {
            Cell cell = sheet.at(row + i, 1);
            texts.add(cell.isNumber() ? cell.shown() : cell.text());
        }
        return known.unpack(texts);
    }
}
