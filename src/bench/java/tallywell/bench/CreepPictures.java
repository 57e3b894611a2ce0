package tallywell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import tallywell.chart.PlateOfTraces;
import tallywell.chart.TracePicture;
import tallywell.chart.TracedWell;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.trace.AfterRule;
import tallywell.trace.Baseline;
import tallywell.trace.Change;
import tallywell.trace.DeltaA;
import tallywell.trace.SimulatedTrace;
import tallywell.trace.SimulatedTrace.Fault;
import tallywell.trace.SimulatedTrace.Kinetics;
import tallywell.trace.SimulatedTrace.Lag;
import tallywell.trace.TraceFlag;

/** Draws the pictures of docs/creep.md from simulated wells, into the folder named by the argument. */
public final class CreepPictures {
    private static final AfterRule LINE = new AfterRule.Extrapolate(OptionalDouble.empty());
    private static final AfterRule CURVE = new AfterRule.ProgressCurve(OptionalDouble.empty());

    private CreepPictures() {}

    /** Draws them. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        SimulatedTrace kind = kind(0.46, 0.001, 0.0031, Fault.NONE);
        Files.write(
                folder.resolve("line.png"), new TracePicture(well("E4", "T03 Russet, tank 3", kind, LINE, 1)).png(760, 560));
        Files.write(
                folder.resolve("curve.png"),
                new TracePicture(well("E4", "T03 Russet, tank 3", kind, CURVE, 1)).png(760, 560));
        Files.write(
                folder.resolve("plate.png"), new PlateOfTraces("Autumn pressing, tanks 1 to 36", plate()).png(1280, 760));
    }

    private static SimulatedTrace kind(double change, double vmaxPerS, double creepPerMin, Fault fault) {
        return new SimulatedTrace(
                Kinetics.MICHAELIS_MENTEN, change, 0.1, vmaxPerS, Lag.COUPLED, 0, creepPerMin, 0.0008, 0, 21, 15, 13,
                0.13, fault);
    }

    private static TracedWell well(String name, String caption, SimulatedTrace kind, AfterRule rule, long seed) {
        SimulatedTrace.Drawn drawn = kind.source().draw(new Random(seed));
        Change change = DeltaA.of(drawn.baseline(), drawn.after(), rule);
        return new TracedWell(
                name,
                caption,
                Optional.of(((Baseline.Read) drawn.baseline()).readings()),
                drawn.after(),
                change,
                change.flags().stream().map(TraceFlag::text).toList());
    }

    /** Blanks in column 1, one well of a slow enzyme, a bubble that makes a trace jump, two wells not in use. */
    private static WellMap<Optional<TracedWell>> plate() {
        Random random = new Random(3);
        return WellMap.of(PlateFormat.P96, well -> {
            if (well.column() == 11 && well.row() > 5) {
                return Optional.empty();
            }
            return Optional.of(simulated(well, random));
        });
    }

    private static TracedWell simulated(Well well, Random random) {
        boolean blank = well.column() == 0;
        boolean slow = well.equals(new Well(2, 5));
        boolean bubble = well.equals(new Well(6, 8));
        double change = blank ? 0.012 : 0.05 + 0.5 * random.nextDouble();
        SimulatedTrace kind = kind(
                change,
                slow ? 0.0003 : 0.0012,
                0.002 * random.nextDouble(),
                bubble ? Fault.JUMP : Fault.NONE);
        String caption = blank ? "blank" : "T" + (8 * well.column() + well.row() - 7);
        return well(well.toString(), caption, kind, LINE, random.nextLong());
    }
}
