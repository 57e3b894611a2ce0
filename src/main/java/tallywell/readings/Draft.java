package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** Pieces that make up one block: one plate at one wavelength. Its numbers are not read yet. */
final class Draft {
    /** Serves to compare times before it is known how to read them: they run forward in all ways or in none. */
    private static final Interpretation ANY = new Interpretation(DecimalMark.POINT, TimeUnit.SECOND, TimeUnit.SECOND);

    private final List<Piece> pieces = new ArrayList<>();
    private final Set<Well> wells = new java.util.HashSet<>();
    private String label;
    private boolean twin;

    Draft(Piece first) {
        pieces.add(first);
        wells.addAll(first.wells());
        label = first.facts().label();
    }

    List<Piece> pieces() {
        return pieces;
    }

    Facts facts() {
        return pieces.get(0).facts();
    }

    /** Whether another block differs from this one in nothing that the file names. */
    boolean isTwin() {
        return twin;
    }

    void markTwin() {
        twin = true;
    }

    String title() {
        return pieces.get(0).title();
    }

    /**
     * Whether another block holds readings of the same wells in the same rows of the file, and no plate, wavelength or
     * time tells the two apart. A wavelength that only one of them states does not.
     */
    boolean isBeside(Draft other) {
        Piece one = pieces.get(0);
        Piece two = other.pieces.get(0);
        return one.sheet() == two.sheet()
                && one.first() == two.first()
                && one.last() == two.last()
                && wells.stream().anyMatch(other.wells::contains)
                && Objects.equals(plateName(), other.plateName())
                && same(facts().wavelengthNm(), other.facts().wavelengthNm())
                && (facts().time().isEmpty()
                        || other.facts().time().isEmpty()
                        || facts().time().equals(other.facts().time()))
                && (facts().cycle().isEmpty()
                        || other.facts().cycle().isEmpty()
                        || facts().cycle().equals(other.facts().cycle()));
    }

    private Optional<String> plateName() {
        return facts().plate().map(name -> name.toLowerCase(Locale.ROOT));
    }

    private static boolean same(OptionalDouble one, OptionalDouble other) {
        return one.isEmpty() || other.isEmpty() || one.equals(other);
    }

    /** Takes a name that tells it from others into its label. */
    void nameAfter(String name) {
        if (!name.equals(label)) {
            label = label.isEmpty() ? name : name.isEmpty() ? label : name + ", " + label;
        }
    }

    private Piece lastPiece() {
        return pieces.get(pieces.size() - 1);
    }

    /**
     * Takes up a piece if it continues this block.
     *
     * @throws InputException if it would, but its time runs backwards
     */
    boolean take(Piece piece) throws InputException {
        boolean joins = piece.times() == null && lastPiece().times() == null
                ? joinsSingle(piece)
                : piece.times() != null && lastPiece().times() != null && joinsSeries(piece);
        if (joins) {
            pieces.add(piece);
            wells.addAll(piece.wells());
        }
        return joins;
    }

    private boolean isDisjoint(Piece piece) {
        return piece.wells().stream().noneMatch(wells::contains);
    }

    private boolean joinsSingle(Piece piece) throws InputException {
        Optional<Moment> time = piece.facts().time();
        Optional<Moment> before = lastPiece().facts().time();
        if (time.isPresent() && before.isPresent() && !time.equals(before)) {
            double last = before.get().seconds(ANY);
            double first = facts().time().orElseThrow().seconds(ANY);
            double now = time.get().seconds(ANY);
            if (now <= last && now > first) {
                throw earlier(piece);
            }
            return now > last;
        }
        return time.equals(before)
                && piece.facts().cycle().equals(lastPiece().facts().cycle())
                && piece.sheet() == lastPiece().sheet()
                && isDisjoint(piece);
    }

    private static InputException earlier(Piece piece) {
        return new InputException(
                piece.sheet().table().place(piece.first()),
                "found a time that lies before that of the readings above it; expected times that run forward");
    }

    private boolean joinsSeries(Piece piece) {
        if (piece.sheet() != lastPiece().sheet()) {
            return false;
        }
        if (isDisjoint(piece)) {
            return true;
        }
        if (!wells.equals(Set.copyOf(piece.wells()))) {
            return false;
        }
        double[] before = timesOf(lastPiece(), 0).seconds(ANY);
        double[] now = timesOf(piece, 0).seconds(ANY);
        return before.length > 0 && now.length > 0 && now[0] > before[before.length - 1];
    }

    private static Times timesOf(Piece piece, int well) {
        var times = piece.times();
        if (times == null) {
            throw new IllegalStateException("piece must have times");
        }
        return times.apply(well);
    }

    /** Whether the readings have times. */
    boolean isTimed() {
        return pieces.stream()
                .anyMatch(
                        piece -> piece.times() != null || !piece.facts().time().equals(facts().time()));
    }

    /** What the times leave open. */
    Set<Moment.Open> open() {
        Set<Moment.Open> open = EnumSet.noneOf(Moment.Open.class);
        if (!isTimed()) {
            return open;
        }
        for (Piece piece : pieces) {
            if (piece.times() == null) {
                piece.facts().time().ifPresent(time -> open.add(time.open()));
            } else {
                for (int well = 0; well < piece.wells().size(); well++) {
                    open.addAll(timesOf(piece, well).open());
                }
            }
        }
        return open;
    }

    /** Step and span of the times as they stand, if there are at least two. */
    Optional<double[]> extent() {
        double[] times = pieces.get(0).times() == null
                ? pieces.stream()
                        .flatMap(piece -> piece.facts().time().stream())
                        .mapToDouble(time -> time.seconds(ANY))
                        .toArray()
                : timesOf(pieces.get(0), 0).seconds(ANY);
        return times.length < 2
                ? Optional.empty()
                : Optional.of(new double[] {times[1] - times[0], times[times.length - 1] - times[0], times.length});
    }

    /**
     * Reads the numbers.
     *
     * @param stated the plate that the file names, if it does
     * @throws InputException if a cell holds none, or times do not run forward
     */
    Block block(int number, Interpretation as, Optional<PlateFormat> stated) throws InputException {
        PlateFormat format = format(stated);
        boolean timed = isTimed();
        Map<Well, GrowingSeries> rows = new LinkedHashMap<>();
        FileOrder order = new FileOrder();
        for (Piece piece : pieces) {
            order.add(piece, read(piece, as, rows));
        }
        ReadingSeries.Builder series = timed ? ReadingSeries.timed(format) : ReadingSeries.endPoint(format);
        for (Map.Entry<Well, GrowingSeries> each : rows.entrySet()) {
            GrowingSeries row = each.getValue();
            series.add(each.getKey(), row.times(), row.values(), row.marks());
        }
        Facts facts = facts();
        OptionalDouble time = !timed
                        && facts.time()
                                .filter(at -> at.open() == Moment.Open.NOTHING)
                                .isPresent()
                ? OptionalDouble.of(facts.time().get().seconds(as))
                : OptionalDouble.empty();
        Block.Origin origin = new Block.Origin(
                pieces.get(0).form() + (timed && pieces.get(0).times() == null ? ", one for each time" : ""),
                where(),
                facts.plate().orElse(""),
                label,
                facts.wavelengthNm(),
                time,
                facts.isProcessed(),
                stated.isPresent() || pieces.get(0).whole() != null);
        return new Block(number, origin, series.build(), order);
    }

    private String where() {
        if (pieces.size() == 1) {
            return pieces.get(0).where();
        }
        String first = pieces.get(0).where().replaceFirst(" to .*", "");
        String last = lastPiece().sheet() == pieces.get(0).sheet()
                ? lastPiece().sheet().table().where(lastPiece().last()).replaceFirst("^.*(line|row) ", "")
                : lastPiece().sheet().table().where(lastPiece().last());
        return (first.startsWith("lines") ? first : first.replaceFirst("^line", "lines")) + " to " + last;
    }

    private PlateFormat format(Optional<PlateFormat> stated) throws InputException {
        PlateFormat shown = stated.orElse(pieces.get(0).whole());
        if (shown != null) {
            for (Well well : wells) {
                if (!shown.holds(well)) {
                    throw outside(well, shown);
                }
            }
            return shown;
        }
        int rows = wells.stream().mapToInt(Well::row).max().orElse(0);
        int columns = wells.stream().mapToInt(Well::column).max().orElse(0);
        PlateFormat least = PlateFormat.smallestWith(new Well(rows, columns)).orElseThrow();
        refuseStray(least);
        return least;
    }

    /** A plate that is complete but for a few wells beyond its edge is not a larger one. */
    private void refuseStray(PlateFormat least) throws InputException {
        for (PlateFormat smaller : PlateFormat.KNOWN) {
            if (smaller.wells() >= least.wells()) {
                return;
            }
            List<Well> beyond =
                    wells.stream().filter(well -> !smaller.holds(well)).sorted().toList();
            int inside = wells.size() - beyond.size();
            if (inside >= 0.9 * smaller.wells() && smaller.wells() >= 24 && beyond.size() * 10 <= smaller.wells()) {
                throw outside(beyond.get(0), smaller);
            }
        }
    }

    private InputException outside(Well well, PlateFormat format) {
        for (Piece piece : pieces) {
            int at = piece.wells().indexOf(well);
            if (at >= 0) {
                return new InputException(
                        piece.sheet().table().place(piece.places().row().at(at, 0)),
                        "found the well " + well + "; expected A1 to " + format.last() + ", the wells of a plate of "
                                + format.wells());
            }
        }
        throw new IllegalStateException("well must come from a piece but was " + well);
    }

    /** Reads a piece, behind what the wells have already. */
    private int[] read(Piece piece, Interpretation as, Map<Well, GrowingSeries> rows) throws InputException {
        int count = piece.wells().size();
        int[] offsets = new int[count];
        GrowingSeries[] targets = new GrowingSeries[count];
        Map<Times, double[]> seconds = new HashMap<>();
        for (int well = 0; well < count; well++) {
            GrowingSeries row = rows.computeIfAbsent(piece.wells().get(well), none -> new GrowingSeries());
            offsets[well] = row.size;
            targets[well] = row;
            double[] times = times(piece, well, as, seconds);
            if (isTimed() && row.size > 0 && times.length > 0 && !(times[0] > row.times[row.size - 1])) {
                throw earlier(piece);
            }
            row.extend(piece.places().size().applyAsInt(well), times);
        }
        if (piece.places().byTime()) {
            int longest = 0;
            for (int well = 0; well < count; well++) {
                longest = Math.max(longest, piece.places().size().applyAsInt(well));
            }
            for (int reading = 0; reading < longest; reading++) {
                for (int well = 0; well < count; well++) {
                    if (reading < piece.places().size().applyAsInt(well)) {
                        targets[well].read(piece, well, reading, as, offsets[well] + reading);
                    }
                }
            }
        } else {
            for (int well = 0; well < count; well++) {
                for (int reading = 0; reading < piece.places().size().applyAsInt(well); reading++) {
                    targets[well].read(piece, well, reading, as, offsets[well] + reading);
                }
            }
        }
        return offsets;
    }

    private double[] times(Piece piece, int well, Interpretation as, Map<Times, double[]> known) throws InputException {
        if (!isTimed()) {
            return new double[piece.places().size().applyAsInt(well)];
        }
        if (piece.times() == null) {
            return new double[] {piece.facts().time().orElseThrow().seconds(as)};
        }
        Times times = timesOf(piece, well);
        double[] seconds = known.get(times);
        if (seconds == null) {
            seconds = times.seconds(as);
            for (int i = 1; i < seconds.length; i++) {
                if (!(seconds[i] > seconds[i - 1])) {
                    throw backwards(piece, well, times, i, seconds);
                }
            }
            known.put(times, seconds);
        }
        return seconds;
    }

    private static InputException backwards(Piece piece, int well, Times times, int at, double[] seconds) {
        String now = tallywell.quantity.Numbers.plain(seconds[at]);
        String before = tallywell.quantity.Numbers.plain(seconds[at - 1]);
        String of = piece.places().byTime() && times == timesOf(piece, 0)
                ? ""
                : " for the well " + piece.wells().get(well);
        return new InputException(
                times.place(at),
                seconds[at] == seconds[at - 1]
                        ? "found the time " + now + " s twice" + of + "; expected each time once"
                        : "found the time " + now + " s after " + before + " s" + of
                                + "; expected times that run forward");
    }
}
