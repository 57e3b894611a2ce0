package tallywell.readings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.table.Table;

/** Decides which reading of a file stands, or refuses to. */
final class Decision {
    /** Readers of plates end at absorbances of 3 to 6 (common practice, no source): beyond, a number is a code. */
    private static final double LARGEST = 6;
    /** A well lets through no three times the light of the reference (common practice, no source). */
    private static final double SMALLEST = -0.5;

    private final Path file;
    private final Choice choice;
    private final List<Notice> notes;
    private final List<Table> tables;

    Decision(Path file, Choice choice, List<Notice> notes, List<Table> tables) {
        this.file = file;
        this.choice = choice;
        this.notes = notes;
        this.tables = tables;
    }

    Export decide(List<Draft> drafts, List<Interpretation> ways, Optional<PlateFormat> stated) throws InputException {
        Map<Block, Draft> all = new LinkedHashMap<>();
        Map<Block, Interpretation> read = new LinkedHashMap<>();
        List<Interpretation> possible = new ArrayList<>();
        InputException fault = null;
        for (Interpretation way : ways) {
            try {
                List<Block> blocks = new ArrayList<>();
                for (Draft draft : drafts) {
                    blocks.add(draft.block(all.size() + blocks.size() + 1, way, stated));
                }
                for (int i = 0; i < blocks.size(); i++) {
                    all.put(blocks.get(i), drafts.get(i));
                    read.put(blocks.get(i), way);
                }
                possible.add(way);
            } catch (InputException e) {
                // A way to read the file that fails is no way to read it; if all fail, the first tells why.
                fault = fault == null ? e : fault;
            }
        }
        if (possible.isEmpty()) {
            if (fault == null) {
                throw new IllegalStateException("there must be a way to read a file");
            }
            throw fault;
        }
        List<Block> fitting = choice.among(all.keySet());
        if (fitting.isEmpty()) {
            throw refused("found no block that fits the choice; expected one of these", all.keySet(), possible, read);
        }
        if (choice.block().isEmpty()) {
            refuseOpen(fitting, all, possible, read);
            refuseLarge(fitting);
        }
        return new Export(file, fitting, explanation(fitting, all, read.get(fitting.get(0))));
    }

    /** Whoever chooses a block by its number has seen it; otherwise no absorbance is as large. */
    private void refuseLarge(List<Block> fitting) throws InputException {
        for (Block block : fitting) {
            Optional<Notice> large = large(block);
            if (large.isPresent()) {
                throw new InputException(
                        Place.file(file),
                        large.get().text()
                                + "; where the reader wrote a number for a well out of range, write OVER; head the"
                                + " readings with mAU if they are thousandths; or choose with --block N, or block: N in"
                                + " the run file");
            }
        }
    }

    private Optional<Notice> large(Block block) {
        ReadingSeries series = block.series();
        for (Well well : series.wells()) {
            for (int i = 0; i < series.size(well); i++) {
                boolean value = series.mark(well, i) == Mark.NONE;
                if (value && !(series.absorbance(well, i) >= SMALLEST && series.absorbance(well, i) <= LARGEST)) {
                    return Optional.of(Notice.attention(
                            Place.file(file),
                            "found the reading " + Numbers.plain(series.absorbance(well, i)) + " of " + well
                                    + " in block " + block.number() + "; expected absorbances, from "
                                    + Numbers.plain(SMALLEST) + " to " + Numbers.plain(LARGEST)));
                }
            }
        }
        return Optional.empty();
    }

    private void refuseOpen(
            List<Block> fitting, Map<Block, Draft> all, List<Interpretation> possible, Map<Block, Interpretation> read)
            throws InputException {
        String remedy = "; choose with --block N, or block: N in the run file";
        if (possible.size() > 1) {
            throw refused(
                    "found " + open(possible) + ", which the file leaves open; expected one meaning" + remedy,
                    fitting,
                    possible,
                    read);
        }
        boolean processed = fitting.stream().anyMatch(Block::isProcessed);
        boolean raw = fitting.stream().anyMatch(block -> !block.isProcessed());
        if (processed) {
            throw refused(
                    (raw
                                    ? "found readings beside readings that were processed (blank subtracted, scaled to a"
                                            + " path length or the like); expected to be told which to take"
                                    : "found only readings that were processed (blank subtracted, scaled to a path length"
                                            + " or the like); expected raw readings, or to be told that these are meant")
                            + remedy,
                    fitting,
                    possible,
                    read);
        }
        Optional<String> doubt = fitting.stream()
                .flatMap(block -> doubt(all.get(block)).stream())
                .findFirst();
        if (doubt.isPresent()) {
            throw refused(
                    doubt.get() + ", or to be told that these readings are meant" + remedy, fitting, possible, read);
        }
        if (fitting.stream().anyMatch(block -> isTwin(all.get(block)))) {
            throw refused(
                    "found several blocks of readings that nothing tells apart: no title, plate, wavelength or time;"
                            + " expected to be told which to take"
                            + remedy,
                    fitting,
                    possible,
                    read);
        }
        List<Block> beside = beside(fitting, all);
        if (!beside.isEmpty()) {
            throw refused(
                    "found readings of the same wells beside each other that no plate, wavelength or time tells apart;"
                            + " expected one for each well, or to be told which to take" + remedy,
                    beside,
                    possible,
                    read);
        }
    }

    /** The blocks that fit the choice and those beside them that only lack the wavelength it asks for. */
    private List<Block> beside(List<Block> fitting, Map<Block, Draft> all) {
        List<Block> candidates = choice.amongUnstated(all.keySet());
        return candidates.stream()
                .filter(one -> candidates.stream().anyMatch(other -> isBeside(one, other, fitting, all)))
                .toList();
    }

    private static boolean isBeside(Block one, Block other, List<Block> fitting, Map<Block, Draft> all) {
        Draft first = all.get(one);
        Draft second = all.get(other);
        return one != other
                && (fitting.contains(one) || fitting.contains(other))
                && first != null
                && second != null
                && first.isBeside(second);
    }

    private static boolean isTwin(@Nullable Draft draft) {
        return draft != null && draft.isTwin();
    }

    private static Optional<String> doubt(@Nullable Draft draft) {
        return draft == null
                ? Optional.empty()
                : draft.pieces().stream()
                        .map(Decision::doubt)
                        .filter(doubt -> !doubt.isEmpty())
                        .findFirst();
    }

    private static String doubt(Piece piece) {
        Facts facts = piece.facts();
        boolean evidence = facts.has(Meaning.VALUE)
                || facts.has(Meaning.ABSORBANCE)
                || facts.has(Meaning.RAW)
                || facts.has(Meaning.MILLI)
                || facts.wavelengthNm().isPresent();
        return facts.doubt().isEmpty() && facts.has(Meaning.UNKNOWN) && !evidence
                ? "found numbers under '" + facts.label() + "' (" + piece.where()
                        + "), which is not understood; expected a heading such as Absorbance"
                : facts.doubt();
    }

    private static boolean isMilli(@Nullable Draft draft) {
        return draft != null && draft.facts().has(Meaning.MILLI);
    }

    private static String open(List<Interpretation> possible) {
        List<String> open = new ArrayList<>();
        if (possible.stream().map(Interpretation::mark).distinct().count() > 1) {
            open.add("numbers such as 1,234 with a decimal comma or a thousands mark");
        }
        if (possible.stream().map(Interpretation::bareUnit).distinct().count() > 1) {
            open.add("times without a unit");
        }
        if (possible.stream().map(Interpretation::twoPart).distinct().count() > 1) {
            open.add("times of two parts that are minutes and seconds, or hours and minutes");
        }
        return String.join(", and ", open);
    }

    private InputException refused(
            String text, Iterable<Block> candidates, List<Interpretation> possible, Map<Block, Interpretation> read) {
        List<Block> blocks = new ArrayList<>();
        candidates.forEach(blocks::add);
        List<String> remarks = new ArrayList<>();
        for (Block block : blocks) {
            Interpretation way = read.get(block);
            remarks.add(way == null ? "" : remark(way, possible));
        }
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.error(Place.file(file), text));
        notices.addAll(Candidates.list(blocks, remarks));
        return new InputException(notices);
    }

    private static String remark(Interpretation way, List<Interpretation> possible) {
        List<String> remarks = new ArrayList<>();
        if (possible.stream().map(Interpretation::mark).distinct().count() > 1) {
            remarks.add(way.mark().label());
        }
        if (possible.stream().map(Interpretation::bareUnit).distinct().count() > 1) {
            remarks.add("times in " + way.bareUnit().label());
        }
        if (possible.stream().map(Interpretation::twoPart).distinct().count() > 1) {
            remarks.add(way.twoPart() == TimeUnit.SECOND ? "times as minutes:seconds" : "times as hours:minutes");
        }
        return String.join(", ", remarks);
    }

    private Explanation explanation(List<Block> blocks, Map<Block, Draft> all, @Nullable Interpretation way) {
        List<String> lines = blocks.stream().map(Decision::line).toList();
        List<Notice> notices = new ArrayList<>(notes);
        if (blocks.stream().anyMatch(block -> isMilli(all.get(block)))) {
            notices.add(Notice.attention(
                    Place.file(file),
                    "the file counts in thousandths of a unit of absorbance; the readings were divided" + " by 1000"));
        }
        for (Block block : blocks) {
            Draft draft = all.get(block);
            if (draft != null && !block.series().isTimed() && block.timeS().isEmpty()) {
                draft.facts()
                        .time()
                        .ifPresent(time -> notices.add(Notice.attention(
                                draft.pieces()
                                        .get(0)
                                        .sheet()
                                        .table()
                                        .place(draft.pieces().get(0).first()),
                                "left out: the time in the words over block " + block.number()
                                        + ", whose unit nothing settles")));
            }
        }
        blocks.stream().flatMap(block -> large(block).stream()).forEach(notices::add);
        if (all.size() > blocks.size()) {
            notices.add(Notice.information(
                    Place.file(file), "left out: " + (all.size() - blocks.size()) + " more blocks, by choice"));
        }
        String mark = way == null ? "" : ", " + way.mark().label();
        return new Explanation(file, written() + mark, lines, notices);
    }

    private String written() {
        Table table = tables.get(0);
        return table.form()
                .map(form -> "text, " + form.encoding() + ", cells set apart by "
                        + form.delimiter().label())
                .orElse("workbook, "
                        + (tables.size() == 1
                                ? "sheet '" + table.sheet() + "'"
                                : tables.size() + " sheets with content"));
    }

    private static String line(Block block) {
        StringBuilder line = new StringBuilder("block " + block.number() + ": " + block.form() + ", " + block.where());
        line.append(block.plate().isEmpty() ? "" : "; plate '" + block.plate() + "'");
        line.append(block.label().isEmpty() ? "" : "; '" + block.label() + "'");
        block.wavelengthNm()
                .ifPresent(nm -> line.append("; ").append(Numbers.plain(nm)).append(" nm"));
        line.append(block.isProcessed() ? "; processed" : "");
        line.append("; ").append(times(block));
        ReadingSeries series = block.series();
        line.append("; ").append(series.wells().size()).append(" wells");
        line.append(block.wholePlate() ? " of a plate of " : ", at least a plate of ")
                .append(series.format().wells());
        line.append(marks(series));
        return line.toString();
    }

    private static String times(Block block) {
        ReadingSeries series = block.series();
        if (!series.isTimed()) {
            return "end point"
                    + (block.timeS().isPresent()
                            ? " at " + Numbers.plain(block.timeS().getAsDouble()) + " s"
                            : "");
        }
        Well first = series.wells().get(0);
        int size = series.size(first);
        return size == 1
                ? "one time, " + Numbers.plain(series.timeS(first, 0)) + " s"
                : size + " times from " + Numbers.plain(series.timeS(first, 0)) + " s to "
                        + Numbers.plain(series.timeS(first, size - 1)) + " s";
    }

    private static String marks(ReadingSeries series) {
        int over = 0;
        int missing = 0;
        for (Well well : series.wells()) {
            for (int i = 0; i < series.size(well); i++) {
                Mark mark = series.mark(well, i);
                over += mark == Mark.OVER ? 1 : 0;
                missing += mark == Mark.MISSING ? 1 : 0;
            }
        }
        return (over > 0 ? "; " + over + " over range" : "") + (missing > 0 ? "; " + missing + " missing" : "");
    }
}
