package tallywell.report;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes the sheet Inputs: for each run how it was asked for, then every file that was read, so that the workbook stands
 * alone. Cells are what every spreadsheet program keeps when it saves, unlike other parts of the file.
 *
 * <p>Column A says what a row is; the rows of a file follow the row that names it, with column A empty.
 */
public final class InputsSheet {
    /** Name of the sheet. */
    public static final String NAME = "Inputs";

    /** Column A of the row that begins a run; its path stands beside it. */
    public static final String RUN = "run";

    /** Column A of a setting: key and value beside it. */
    public static final String SETTING = "setting";

    /** Column A of a file: number, role, as named in the run, name, packing, bytes, rows, SHA-256 beside it. */
    public static final String FILE = "file";

    /** In place of a packing: the rows are those of the file with this number. */
    public static final String SAME_AS = "same as ";

    /** In place of a packing: the file is too large to be carried. */
    public static final String LEFT_OUT = "left out";

    private static final List<String> HEADS = List.of(
            "What",
            "Number or key",
            "Role or value",
            "As named in the run",
            "File",
            "Packing",
            "Bytes",
            "Rows",
            "SHA-256");
    private static final int ROWS = 7;

    private final Sheet sheet;
    private final Map<String, Integer> known = new HashMap<>();
    private int row;
    private int number;

    /** Starts the sheet. */
    InputsSheet(Sheet sheet) throws IOException {
        this.sheet = sheet;
        sheet.row(row++, 26);
        sheet.text(0, NAME, Looks.TITLE);
        sheet.row(row++);
        sheet.text(
                0,
                "Every file that was read, so that 'tallywell recheck' can work this summary up again from itself. Plain"
                        + " text stands as it is; anything else is deflated and written in base64.",
                Looks.NOTE);
        sheet.row(row++);
        sheet.heads(0, HEADS, Looks.HEAD);
    }

    /** Adds what a run carries. */
    void add(String run, Carried carried, List<Carried.Setting> more) throws IOException {
        sheet.row(row++, 20);
        sheet.text(0, RUN, Looks.LABEL);
        sheet.text(1, run, Looks.SECTION);
        for (Carried.Setting setting : carried.settings()) {
            setting(setting);
        }
        for (Carried.Setting setting : more) {
            setting(setting);
        }
        for (CarriedFile file : carried.files()) {
            file(file);
        }
    }

    private void setting(Carried.Setting setting) throws IOException {
        sheet.row(row++);
        sheet.text(0, SETTING, Looks.LABEL);
        sheet.text(1, setting.key(), Looks.TEXT);
        sheet.text(2, setting.value(), Looks.TEXT);
    }

    private void file(CarriedFile file) throws IOException {
        number++;
        Integer before = known.putIfAbsent(file.sha256(), number);
        if (before != null) {
            head(file, SAME_AS + before, List.of());
            return;
        }
        Optional<Packing.Packed> packed = Packing.pack(file.shared());
        if (packed.isEmpty()) {
            head(file, LEFT_OUT, List.of());
            return;
        }
        head(file, packed.get().packing().word(), packed.get().rows());
    }

    private void head(CarriedFile file, String packing, List<String> rows) throws IOException {
        sheet.row(row++);
        Look look = Look.PLAIN.face(Look.Face.BOLD);
        sheet.text(0, FILE, Looks.LABEL);
        sheet.number(1, number, look.align(Look.Align.LEFT));
        sheet.text(2, file.role(), look);
        sheet.text(3, file.typed(), look);
        sheet.text(4, file.name(), look);
        sheet.text(5, packing, Looks.TEXT);
        sheet.number(6, file.shared().length, Looks.TEXT);
        sheet.number(ROWS, rows.size(), Looks.TEXT);
        sheet.text(ROWS + 1, file.sha256(), Looks.NOTE);
        for (String text : rows) {
            sheet.row(row++);
            sheet.text(1, text, Looks.NOTE);
        }
    }

    /** Ends the sheet. */
    void finish(String footer) {
        sheet.widths(9, 16, 16, 24, 40, 12, 9, 7, 52);
        sheet.freeze(3, 1);
        sheet.print(true, false, 3, footer);
        sheet.printArea(row - 1, HEADS.size() - 1);
    }
}
