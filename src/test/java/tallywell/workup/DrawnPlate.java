package tallywell.workup;

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
import tallywell.method.AssayMethod;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** Plates of 24 wells as drawn from a law of each well: the tests' own generator, which shares nothing with what is tested. */
public final class DrawnPlate {
    private static final String METHOD = """
            tallywell: method/1
            id: drawn
            title: "Kinetic, for a test"
            source: "made for a test"
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: acid, formula: C4H6O5, signal-per-analyte: 1}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                timing: {before: 3 min, after: 20 min, trigger-to-first-read: 15 s}
            light-path: {beam: fixed, length: 1 cm}
            """;

    /** Nine samples in duplicate by absorptivity. */
    public static final String SAMPLES = """
            tallywell: layout/1
            name: twenty-four
            plate: 24
            wells:
              A: o o o o o o
              B: 1 1 2 2 3 3
              C: 4 4 5 5 6 6
              D: 7 7 8 8 9 9
            legend:
              o: {role: blank}
            """;

    /** Four standards and seven samples in duplicate. */
    public static final String STANDARDS = """
            tallywell: layout/1
            name: twenty-four with standards
            plate: 24
            wells:
              A: o o a a b b
              B: c c d d 1 1
              C: 2 2 3 3 4 4
              D: 5 5 6 6 7 7
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.10 g/L}
              b: {role: standard, level: 0.25 g/L}
              c: {role: standard, level: 0.50 g/L}
              d: {role: standard, level: 0.75 g/L}
            """;

    private final AssayMethod method;
    private final Layout layout;
    private double minutes = 25;
    private double intervalS = 15;
    private double writtenS = 180;
    private double digit = 0.0001;

    /** Absorbance of a well less its baseline. */
    public interface Law {
        /** At a time in s after the trigger, positive. */
        double at(double timeS);
    }

    /** What happens in each pair of wells. */
    public interface Laws {
        /** The law of a pair, counted in row order from 0, for one of its wells. */
        Law of(int pair, Well well);
    }

    private DrawnPlate(AssayMethod method, Layout layout) {
        this.method = method;
        this.layout = layout;
    }

    /** A plate with a calibration and further keys of the method. */
    public static DrawnPlate of(String layout, String calibration, String... further) throws InputException {
        try {
            Path file = Files.createTempFile("layout", ".yaml");
            Files.writeString(file, layout);
            Layout drawn = new LayoutReader().read(file);
            Files.delete(file);
            String text =
                    METHOD + "calibration: " + calibration + "\nreport: {unit: g/L}\n" + String.join("\n", further);
            return new DrawnPlate(new MethodReader().parse(Path.of("method.yaml"), text), drawn);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** With other times: length after the trigger, interval. */
    public DrawnPlate read(double lengthMinutes, double everyS) {
        minutes = lengthMinutes;
        intervalS = everyS;
        return this;
    }

    /** With a trigger written at another time than 180 s, when it was. */
    public DrawnPlate written(double timeS) {
        writtenS = timeS;
        return this;
    }

    /** With readings of other digits. */
    public DrawnPlate digit(double least) {
        digit = least;
        return this;
    }

    /** Draws the readings: noise of 0.5 mA and 0.1 % of the absorbance, cut off at a ceiling. */
    public Assay drawn(Laws laws, double ceiling, Random random) {
        PlateFormat format = layout.format();
        ReadingSeries.Builder series = ReadingSeries.timed(format);
        int n = (int) Math.round((180 + 60 * minutes) / intervalS) + 1;
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = intervalS * i;
        }
        int at = 0;
        for (Well well : format.all()) {
            Law law = laws.of(at / 2, well);
            at++;
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                // The trigger falls between two readings.
                double after = t[i] - 187;
                double mean = 0.15 + (after > 0 ? law.at(after) : 0);
                double noisy = mean + Math.hypot(0.0005, 0.001 * mean) * random.nextGaussian();
                y[i] = Math.round(Math.min(ceiling, noisy) / digit) * digit;
            }
            series.add(well, t, y, null);
        }
        Taken taken = new Taken("trace.csv", false, List.of(writtenS + 7), OptionalDouble.empty(), series.build());
        return new Assay(
                "run.yaml",
                "",
                "",
                "",
                method,
                layout,
                SampleList.plain(layout.slots()),
                List.of(taken),
                Map.of(),
                Map.of());
    }
}
