package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.table.Table;

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
    private final List<Line> words = new ArrayList<>();

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

    Table table() {
        return sheet.table();
    }

    /** What was left out. */
    List<Notice> notes() {
        return notes;
    }

    /** The lines of words between the readings. */
    List<Line> words() {
        return words;
    }

    private void run() throws InputException {
        List<Finding> findings = new ArrayList<>();
        List<Gap> gaps = new ArrayList<>();
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
            if (finding.pieces().isEmpty()) {
                notes.addAll(finding.notes());
            } else {
                gaps.add(new Gap(unclaimed, first));
                findings.add(finding);
            }
            unclaimed = finding.last() + 1;
            row = sheet.nextFilled(unclaimed);
        }
        gaps.add(new Gap(unclaimed, sheet.rows()));
        words.addAll(Caption.lines(sheet, unclaimed, sheet.rows()));
        noteUnclaimed(unclaimed, sheet.rows());
        name(findings, gaps);
    }

    /** Gives the readings what the words above them say, or those below where the file shows that these are meant. */
    private void name(List<Finding> findings, List<Gap> gaps) {
        CaptionSides sides = new CaptionSides(sheet, gaps);
        Facts before = Facts.none();
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            Facts caption = Facts.none();
            for (Piece piece : finding.pieces()) {
                Caption above =
                        Caption.above(sheet, gaps.get(i).from(), gaps.get(i).to());
                caption = above.of(piece, finding.pieces());
                addNew(above.notes());
                if (sides.isAnyBelow()) {
                    Gap gap = gaps.get(i + 1);
                    Caption below = Caption.below(sheet, gap.from(), gap.to());
                    caption = sides.join(caption, below.of(piece, finding.pieces()), i > 0);
                    addNew(below.notes());
                }
                caption = sides.doubted(caption);
                Facts title = caption.or(before);
                pieces.add(piece.with(piece.facts().under(caption).or(before), title.label()));
            }
            before = sides.lasting(caption.or(before));
            notes.addAll(finding.notes());
        }
        addNew(sides.notes());
    }

    private void addNew(List<Notice> more) {
        more.stream().filter(notice -> !notes.contains(notice)).forEach(notes::add);
    }

    /** Rows between readings, from the first to before the last. */
    record Gap(int from, int to) {}

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
