package tallywell.bench;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import tallywell.trace.AfterRule;
import tallywell.trace.Baseline;
import tallywell.trace.Change;
import tallywell.trace.CommonDrift;
import tallywell.trace.DeltaA;
import tallywell.trace.SimulatedTrace;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.TraceFlag;

/**
 * What an estimator made of the traces of one cell. Absorbances are in mA.
 *
 * @param cell the cell
 * @param bound Cramér-Rao bound on the standard deviation of ΔA under the generating law
 * @param burstLeft true burst left at the last reading
 * @param traces how many traces were drawn
 * @param incomplete how many were flagged as incomplete
 * @param late how many had more than 0.5 mA of burst left at the chosen start of the finished part
 * @param lateFlagged how many of those were flagged
 * @param bias mean error of those not flagged
 * @param rms root mean square error of those
 * @param covered part of those whose 95 % interval holds the truth
 * @param meanU root mean square of their standard uncertainties
 * @param unsafe part of all traces that were neither flagged in any way nor within twice their uncertainty
 */
record CellResult(
        SimulatedTrace cell,
        double bound,
        double burstLeft,
        int traces,
        int incomplete,
        int late,
        int lateFlagged,
        double bias,
        double rms,
        double covered,
        double meanU,
        double unsafe) {
    private static final Set<TraceFlag> WARNINGS = EnumSet.of(
            TraceFlag.REACTION_INCOMPLETE,
            TraceFlag.JUMP,
            TraceFlag.CREEP_NOT_CONSTANT,
            TraceFlag.CURVE_MISFIT,
            TraceFlag.BASELINE_DRIFTS,
            TraceFlag.SPIKE);

    private static final int WELLS = 88;
    private static final int BLANKS = 8;

    static CellResult of(SimulatedTrace cell, AfterRule rule, int traces, long seed) {
        SimulatedTrace.Source source = cell.source();
        Random random = random(cell, seed);
        Tally tally = new Tally(cell);
        for (int i = 0; i < traces; i++) {
            SimulatedTrace.Drawn drawn = source.draw(random);
            tally.add(DeltaA.of(drawn.baseline(), drawn.after(), rule), drawn, false);
        }
        return tally.result(traces);
    }

    /**
     * The same cell on plates of {@value #WELLS} wells and {@value #BLANKS} blanks whose lamp drifts alike, looked at together.
     */
    static CellResult ofPlates(SimulatedTrace cell, AfterRule rule, int traces, long seed) {
        SimulatedTrace.Source source = cell.source();
        SimulatedTrace.Source blank = cell.blank().source();
        Random random = random(cell, seed);
        Tally tally = new Tally(cell);
        int plates = Math.max(1, traces / WELLS);
        for (int plate = 0; plate < plates; plate++) {
            double phase = 2 * Math.PI * random.nextDouble();
            List<SimulatedTrace.Drawn> drawn = new ArrayList<>();
            List<CommonDrift.Followed> followed = new ArrayList<>();
            for (int well = 0; well < WELLS + BLANKS; well++) {
                SimulatedTrace.Drawn each = (well < WELLS ? source : blank).draw(random, phase);
                drawn.add(each);
                followed.add(new CommonDrift.Followed(
                        Optional.of(((Baseline.Read) each.baseline()).readings()),
                        each.after(),
                        DeltaA.of(each.baseline(), each.after(), rule),
                        IntStream.range(0, each.after().size()).boxed().toList()));
            }
            Optional<CommonDrift> drift = CommonDrift.of(followed);
            for (int well = 0; well < WELLS; well++) {
                Change change = followed.get(well).change();
                double u = change.uDeltaA().orElseThrow();
                tally.add(change, drawn.get(well), drift.isPresent() && drift.get().mattersTo(u));
            }
        }
        return tally.result(plates * WELLS);
    }

    /** By the name of the cell, so that a run can be repeated. */
    private static Random random(SimulatedTrace cell, long seed) {
        return new Random(seed * 1_000_003 + cell.toString().hashCode());
    }

    /** Sums over the traces of a cell. */
    private static final class Tally {
        private final SimulatedTrace cell;
        private int incomplete;
        private int late;
        private int lateFlagged;
        private int unsafe;
        private int judged;
        private int covered;
        private double sum;
        private double squares;
        private double uSquares;

        Tally(SimulatedTrace cell) {
            this.cell = cell;
        }

        void add(Change change, SimulatedTrace.Drawn drawn, boolean plateDrifts) {
            double error = 1000 * (change.deltaA() - cell.change());
            double u = 1000 * change.uDeltaA().orElseThrow();
            boolean flagged = change.flags().contains(TraceFlag.REACTION_INCOMPLETE);
            double left = change.finished()
                    .map(part -> 1000 * cell.burstLeft(drawn.after().timeS(part.from())))
                    .orElse(0.0);
            if (left > 0.5) {
                late++;
                lateFlagged += flagged ? 1 : 0;
            }
            boolean warned =
                    plateDrifts || change.flags().stream().anyMatch(WARNINGS::contains);
            unsafe += !warned && Math.abs(error) > 2 * u ? 1 : 0;
            if (flagged) {
                incomplete++;
                return;
            }
            judged++;
            sum += error;
            squares += error * error;
            uSquares += u * u;
            covered += Math.abs(error) < 1.959964 * u ? 1 : 0;
        }

        CellResult result(int traces) {
            double n = Math.max(1, judged);
            return new CellResult(
                    cell,
                    1000 * cell.bound(),
                    1000 * cell.burstLeftAtEnd(),
                    traces,
                    incomplete,
                    late,
                    lateFlagged,
                    sum / n,
                    Math.sqrt(squares / n),
                    covered / n,
                    Math.sqrt(uSquares / n),
                    (double) unsafe / traces);
        }
    }

    int judged() {
        return traces - incomplete;
    }

    double flagged() {
        return (double) incomplete / traces;
    }

    /** Whether enough traces were not flagged to say anything of them. */
    boolean isJudged() {
        return judged() >= traces / 20;
    }

    /** Standard deviation of the simulated bias. */
    double mcOfBias() {
        return rms / Math.sqrt(Math.max(1, judged()));
    }

    /** Standard deviation of the simulated coverage, at 95 %. */
    double mcOfCovered() {
        return Math.sqrt(0.05 * 0.95 / Math.max(1, judged()));
    }

    /** Whether more coverage than 97 % is allowed. */
    boolean mayCoverMore() {
        return cell.lagS() == 0 || cell.creepPerMin() == 0;
    }

    String name() {
        String law = cell.kinetics() == Kinetics.FIRST_ORDER
                ? String.format(Locale.ROOT, "k %.3f /s", cell.first())
                : String.format(Locale.ROOT, "Km %.2f ΔA, Vmax %.3f /s", cell.first(), cell.vmaxPerS());
        String lag = cell.lagS() == 0
                ? "no lag"
                : String.format(Locale.ROOT, "%s lag %.0f s", cell.lag().name().toLowerCase(Locale.ROOT), cell.lagS());
        return String.format(
                Locale.ROOT,
                "ΔA %.2f, %s, %s, creep %.0f mA/min, σ0 %.1f mA, carry %.1f, %.0f min",
                cell.change(),
                law,
                lag,
                1000 * cell.creepPerMin(),
                1000 * cell.noise(),
                cell.carry(),
                cell.minutes());
    }
}
