package tallywell.assess;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Assay;
import tallywell.workup.Flag;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/**
 * A made-up plate of 96 wells, read once before and a few times after the trigger: eight blanks, four standards of 0.1, 0.3, 0.6
 * and 1.1 A in duplicate, 36 samples of 0.05 to 1.1 A in duplicate. First order, creep of 1 mA/min. It knows nothing of how
 * the program calculates.
 *
 * @param calibration {@code absorptivity} or {@code standards, model: line}
 * @param ratePerS of the reaction in samples
 * @param standardsPerS the same in standards
 * @param noise scatter of a reading, in absorbance
 * @param timesS times of the readings after the trigger
 */
record EndPointPlate(String calibration, double ratePerS, double standardsPerS, double noise, double[] timesS) {
    private static final double PIPETTING = 0.002;
    private static final double CREEP_PER_S = 0.001 / 60;
    private static final double[] STANDARDS = {0.1, 0.3, 0.6, 1.1};
    private static final double[] SAMPLES = {0.05, 0.1, 0.2, 0.4, 0.7, 1.05};
    /** g/L for an absorbance of 1: 1000/100 · 126 / 6300. */
    private static final double PER_ABSORBANCE = 0.2;

    private static final String METHOD = """
            tallywell: method/1
            id: by-hand
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 126 g/mol}
                volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
            light-path: {beam: fixed, length: 1 cm}
            creep: {correct: extrapolate}
            calibration: {by: %s}
            report: {unit: g/L}
            """;

    EndPointPlate(String calibration, double ratePerS, double noise, double... timesS) {
        this(calibration, ratePerS, ratePerS, noise, timesS);
    }

    EndPointPlate withStandards(double perS) {
        return new EndPointPlate(calibration, ratePerS, perS, noise, timesS);
    }

    /**
     * What became of the results, as parts of all.
     *
     * @param wrong off by more than twice U with the verdict report
     * @param outside off by more than U with the verdict report
     * @param passed with neither flag of an unfinished reaction
     * @param incomplete flagged as incomplete
     * @param over1A value with a U, off by more than U, of whatever verdict
     * @param restsOnUnfinished flagged for its standards or blanks
     */
    record Outcome(
            double wrong, double outside, double passed, double incomplete, double over1A, double restsOnUnfinished) {}

    Outcome draw(int plates, long seed) throws InputException {
        Random random = new Random(seed);
        double[] counts = new double[6];
        int all = 0;
        for (int plate = 0; plate < plates; plate++) {
            for (Judgement each : assess(random).judgements()) {
                int slot = each.result().slot().orElseThrow();
                double truth = PER_ABSORBANCE * SAMPLES[(slot - 1) % SAMPLES.length];
                double off = Math.abs(each.result().value().orElse(truth) - truth);
                double expanded =
                        each.budget().map(b -> b.expandedUncertainty()).orElse(0.0);
                boolean report = each.verdict() == Verdict.REPORT;
                boolean incomplete = each.result().flags().contains(Flag.REACTION_INCOMPLETE);
                boolean open = each.result().flags().contains(Flag.CREEP_NOT_TESTED);
                all++;
                counts[0] += report && off > 2 * expanded ? 1 : 0;
                counts[1] += report && off > expanded ? 1 : 0;
                counts[2] += incomplete || open ? 0 : 1;
                counts[3] += incomplete ? 1 : 0;
                counts[4] += off > expanded ? 1 : 0;
                counts[5] += each.result().flags().contains(Flag.STANDARDS_UNFINISHED) ? 1 : 0;
            }
        }
        return new Outcome(
                counts[0] / all, counts[1] / all, counts[2] / all, counts[3] / all, counts[4] / all, counts[5] / all);
    }

    Assessment assessed(long seed) throws InputException {
        return assess(new Random(seed));
    }

    private Assessment assess(Random random) throws InputException {
        ReadingSeries.Builder series = ReadingSeries.timed(new PlateFormat(8, 12));
        StringBuilder layout = new StringBuilder("tallywell: layout/1\nname: made\nplate: 96\nwells:\n");
        for (int row = 0; row < 8; row++) {
            layout.append("  ").append((char) ('A' + row)).append(":");
            for (int column = 0; column < 12; column++) {
                int pair = row * 6 + column / 2;
                layout.append(' ')
                        .append(
                                pair < 4
                                        ? "o"
                                        : pair < 8 ? Character.toString('a' + pair - 4) : Integer.toString(pair - 7));
                double change = pair < 4 ? 0 : pair < 8 ? STANDARDS[pair - 4] : SAMPLES[(pair - 8) % SAMPLES.length];
                double rate = pair >= 4 && pair < 8 ? standardsPerS : ratePerS;
                read(series, new Well(row, column), rate, change, random);
            }
            layout.append('\n');
        }
        layout.append("legend:\n  o: {role: blank}\n");
        for (int i = 0; i < STANDARDS.length; i++) {
            layout.append("  ")
                    .append((char) ('a' + i))
                    .append(": {role: standard, level: ")
                    .append(PER_ABSORBANCE * STANDARDS[i]);
            layout.append(" g/L}\n");
        }
        Taken taken = new Taken("series", false, List.of(60.0), OptionalDouble.empty(), series.build());
        try {
            Path file = Files.createTempFile("layout", ".yaml");
            Files.writeString(file, layout.toString());
            Layout drawn = new LayoutReader().read(file);
            Files.delete(file);
            Assay assay = new Assay(
                    "run.yaml",
                    "",
                    "",
                    "",
                    new MethodReader().parse(Path.of("method.yaml"), METHOD.formatted(calibration)),
                    drawn,
                    SampleList.plain(drawn.slots()),
                    List.of(taken),
                    Map.of(),
                    Map.of());
            return new Assessor().assess(new Workup().analyse(assay));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void read(ReadingSeries.Builder series, Well well, double rate, double whole, Random random) {
        double change = whole * (1 + PIPETTING * random.nextGaussian());
        double[] times = new double[timesS.length + 1];
        double[] read = new double[timesS.length + 1];
        read[0] = 0.1 + noise * random.nextGaussian();
        for (int i = 0; i < timesS.length; i++) {
            double t = timesS[i];
            times[i + 1] = 60 + t;
            read[i + 1] = 0.1 - change * Math.expm1(-rate * t) + CREEP_PER_S * t + noise * random.nextGaussian();
        }
        series.add(well, times, read, null);
    }
}
