package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.Notice;

/** Goes down a sheet and asks each form whether readings begin at a row; what stands between are captions. */
final class Scan {
    /** In the order in which they are asked: what is named most fully comes first. */
    private static final List<Form> FORMS = List.of(
            new WellTables(),
            new WellsAcross(),
            new WellsDown(),
            new HeadedGrid(false),
            new HeadedGrid(true),
            new PlainGrid());

    /** Fewer numbers in a row are remarks. */
    private static final int MANY = 4;

    private final Sheet sheet;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Notice> notes = new ArrayList<>();
    private final List<String> words = new ArrayList<>();

    private Scan(Sheet sheet) {
        this.sheet = sheet;
    }

    static Scan of(Sheet sheet) throws InputException {
        Scan scan = new Scan(sheet);
        scan.run();
        return scan;
    }

    /** The readings found, from top to bottom. */
    List<Piece> pieces() {
        return pieces;
    }

    /** What was left out. */
    List<Notice> notes() {
        return notes;
    }

    /** The lines of words between the readings. */
    List<String> words() {
        return words;
    }

    private void run() throws InputException {
        Facts before = Facts.none();
        int unclaimed = 0;
        int row = sheet.nextFilled(0);
        while (row < sheet.rows()) {
            Optional<Finding> found = find(row);
            if (found.isEmpty()) {
                row = sheet.nextFilled(row + 1);
                continue;
            }
            Finding finding = found.get();
            int first = Math.max(unclaimed, finding.first());
            words.addAll(Caption.lines(sheet, unclaimed, first));
            noteUnclaimed(unclaimed, first);
            Facts caption = Facts.none();
            for (Piece piece : finding.pieces()) {
                caption = new Caption(sheet, unclaimed, first).over(piece, finding.pieces());
                Facts title = caption.or(before);
                pieces.add(piece.with(piece.facts().under(caption).or(before), title.label()));
            }
            before = caption.or(before);
            notes.addAll(finding.notes());
            unclaimed = finding.last() + 1;
            row = sheet.nextFilled(unclaimed);
        }
        words.addAll(Caption.lines(sheet, unclaimed, sheet.rows()));
        noteUnclaimed(unclaimed, sheet.rows());
    }

    private Optional<Finding> find(int row) throws InputException {
        for (Form form : FORMS) {
            Optional<Finding> found = form.find(sheet, row);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    /** Rows of numbers that no form took must not go by in silence. */
    private void noteUnclaimed(int from, int to) {
        int start = -1;
        int end = -1;
        for (int row = from; row < to; row++) {
            int numbers = 0;
            for (int column = 0; column < sheet.width(row) && numbers < MANY; column++) {
                numbers += sheet.look(row, column).isNumber() ? 1 : 0;
            }
            if (numbers >= MANY) {
                start = start < 0 ? row : start;
                end = row;
            }
        }
        if (start >= 0) {
            notes.add(Notice.information(
                    sheet.table().place(start),
                    start == end
                            ? "left out: a row of numbers that names no wells"
                            : "left out: rows of numbers that name no wells, down to "
                                    + sheet.table().where(end)));
        }
    }
}
