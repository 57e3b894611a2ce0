package tallywell.readings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.PlateFormat;
import tallywell.table.Table;
import tallywell.table.Tables;

/**
 * Reads any export by its structure: a file is cut into cells, the cells are searched for the forms in which readings
 * are written, and what the whole file shows settles how numbers and times are meant. Where more than one reading of
 * the file remains possible, nothing is guessed.
 */
public final class Importer {
    private static final Pattern PLATE_SIZE = Pattern.compile(
            "(?<![\\d.,])(\\d{1,4})[- ]?(?:" + Vocabulary.alternatives("WELL_COUNT") + ")(?!\\p{L})",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** What the name of a sheet says of its readings, whatever else names them. */
    private static final Set<Meaning> OF_SHEETS =
            EnumSet.of(Meaning.PROCESSED, Meaning.OTHER_SIGNAL, Meaning.STATISTIC);

    /**
     * Reads a file.
     *
     * @param file text, xlsx or xls
     * @param choice what the user decided
     * @throws InputException if the file is damaged or holds no readings, or if more than one reading of it remains
     *     possible and the choice does not decide
     */
    public Export read(Path file, Choice choice) throws InputException {
        return read(file, Tables.sheets(file), choice);
    }

    /**
     * Reads what has been cut into cells, for whoever looks for more in it.
     *
     * @param file where the cells are from, for messages
     * @param tables all tables of the file
     * @param choice what the user decided
     * @throws InputException as above
     */
    public Export read(Path file, List<Table> tables, Choice choice) throws InputException {
        Findings findings = search(file, tables);
        List<Draft> drafts = Assembly.drafts(findings.pieces);
        Evidence evidence = new Evidence();
        findings.pieces.forEach(piece -> piece.testify(evidence));
        List<Interpretation> ways = ways(evidence.marks(), drafts, findings);
        return new Decision(file, choice, findings.notes, findings.tables)
                .decide(drafts, ways, stated(findings.words))
                .withReadAt(ReadMoment.of(tables));
    }

    /** What the sheets of a file hold. */
    private static final class Findings {
        private final List<Table> tables = new ArrayList<>();
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Notice> notes = new ArrayList<>();
        private final List<Line> words = new ArrayList<>();
    }

    private static Findings search(Path file, List<Table> tables) throws InputException {
        Findings findings = new Findings();
        List<Scan> scans = new ArrayList<>();
        for (Table table : tables) {
            if (!table.isBlank()) {
                findings.tables.add(table);
                scans.add(Scan.of(new Sheet(table)));
            }
        }
        if (scans.isEmpty()) {
            throw new InputException(Place.file(file), "found nothing in the file; expected readings");
        }
        long filled = scans.stream().filter(scan -> !scan.pieces().isEmpty()).count();
        for (Scan scan : scans) {
            Table table = scan.table();
            table.hidden().forEach(text -> findings.notes.add(Notice.attention(table.place(), text)));
            findings.notes.addAll(scan.notes());
            findings.words.addAll(scan.words());
            for (Piece piece : scan.pieces()) {
                findings.pieces.add(named(piece, filled > 1));
            }
        }
        leaveOut(findings);
        if (findings.pieces.isEmpty()) {
            throw new InputException(
                    Place.file(file),
                    "found no readings; expected a grid of rows A, B, C … and columns 1, 2, 3 …, a list of wells such"
                            + " as A1, or times beside columns headed by wells" + hint(findings));
        }
        for (Piece piece : findings.pieces) {
            Truncation.check(piece);
            Thousandths.check(piece);
        }
        return findings;
    }

    private static String hint(Findings findings) {
        return findings.notes.isEmpty() ? "" : " (" + findings.notes.get(0) + ")";
    }

    /** The name of a sheet says something too; where several hold readings, it names them. */
    private static Piece named(Piece piece, boolean several) {
        String sheet = piece.sheet().table().sheet();
        Facts facts = piece.facts();
        Facts of = Claim.of(Facts.ofLine(sheet), sheet, facts);
        boolean label = several && facts.label().isEmpty();
        Facts more = label
                ? of.withLabel(of.label().isEmpty() && of.isSomething() ? "" : sheet)
                : of.withLabel("").withMeanings(Set.of());
        for (Meaning meaning : OF_SHEETS) {
            facts = of.has(meaning) && !sheet.isEmpty() ? facts.plus(meaning) : facts;
        }
        return piece.with(facts.or(several ? more : more.withTime(Optional.empty())));
    }

    /** Takes out what is no absorbance, and plans of whole numbers beside readings with decimals. */
    private static void leaveOut(Findings findings) {
        List<Piece> kept = new ArrayList<>();
        boolean decimals = findings.pieces.stream().anyMatch(Importer::hasDecimals);
        for (Piece piece : findings.pieces) {
            boolean other = piece.facts().isOtherQuantity();
            boolean plan = decimals && !hasDecimals(piece) && piece.times() == null;
            if (other || plan) {
                String name = piece.facts().label().isEmpty()
                        ? piece.form()
                        : "'" + piece.facts().label() + "'";
                findings.notes.add(Notice.information(
                        piece.sheet().table().place(piece.first()),
                        "left out: " + name
                                + (other
                                        ? ", no readings of absorbance"
                                        : ", whole numbers where others are decimal")));
            } else {
                kept.add(piece);
            }
        }
        findings.pieces.clear();
        findings.pieces.addAll(kept);
    }

    private static boolean hasDecimals(Piece piece) {
        for (int well = 0; well < piece.wells().size(); well++) {
            for (int reading = 0; reading < piece.places().size().applyAsInt(well); reading++) {
                Look look = piece.sheet()
                        .look(
                                piece.places().row().at(well, reading),
                                piece.places().column().at(well, reading));
                if (look.isDecimal() || look == Look.STORED || look == Look.OVER) {
                    return true;
                }
            }
        }
        return false;
    }

    private static List<Interpretation> ways(List<DecimalMark> marks, List<Draft> drafts, Findings findings) {
        boolean bare = false;
        boolean parts = false;
        for (Draft draft : drafts) {
            bare |= draft.open().contains(Moment.Open.UNIT);
            parts |= draft.open().contains(Moment.Open.PARTS);
        }
        TimeUnits.Settled known = new TimeUnits.Settled(List.of(TimeUnit.SECOND), List.of());
        TimeUnits.Settled units = bare ? TimeUnits.bare(drafts, findings.words) : known;
        TimeUnits.Settled seconds = parts ? TimeUnits.twoPart(drafts, findings.words) : known;
        units.grounds()
                .forEach(
                        line -> findings.notes.add(ground(line, units.possible().get(0))));
        seconds.grounds()
                .forEach(line ->
                        findings.notes.add(ground(line, seconds.possible().get(0))));
        List<Interpretation> ways = new ArrayList<>();
        for (DecimalMark mark : marks) {
            for (TimeUnit unit : units.possible()) {
                for (TimeUnit second : seconds.possible()) {
                    ways.add(new Interpretation(mark, unit, second));
                }
            }
        }
        return ways;
    }

    private static Notice ground(Line line, TimeUnit unit) {
        return Notice.information(line.place(), "'" + line.text() + "' shows that times count " + unit.label());
    }

    /** The plate that the words name by its size, if they name just one. */
    private static Optional<PlateFormat> stated(List<Line> words) {
        Set<PlateFormat> stated = new LinkedHashSet<>();
        for (Line line : words) {
            Matcher size = PLATE_SIZE.matcher(line.text());
            boolean plate = Words.in(line.text()).contains(Meaning.PLATE);
            while (size.find() && (plate || size.start() == 0)) {
                PlateFormat.ofWells(Integer.parseInt(size.group(1))).ifPresent(stated::add);
            }
        }
        return stated.size() == 1 ? Optional.of(stated.iterator().next()) : Optional.empty();
    }
}
