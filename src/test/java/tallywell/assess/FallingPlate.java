package tallywell.assess;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.workup.Assay;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/**
 * A made-up plate of 96 wells in a falling assay with end points: eight blanks, then samples in duplicate. A well reads what
 * is there of NADH, plate and colour; NADH never falls below nothing. It knows nothing of how the program calculates.
 */
final class FallingPlate {
    static final double NOISE = 0.001;
    static final double BLANK_DELTA_A = 0.010;

    private final double nadh;
    private final double plate;
    private final String method;
    private final Random random;
    private final List<Made> samples = new ArrayList<>();

    /**
     * A sample.
     *
     * @param colour absorbance that stays
     * @param usedBefore NADH that it uses up before the trigger, in absorbance
     * @param netDeltaA what its analyte would use up if there were NADH enough
     */
    record Made(String name, double dilution, double colour, double usedBefore, double netDeltaA) {}

    FallingPlate(double nadh, double plate, String method, long seed) {
        this.nadh = nadh;
        this.plate = plate;
        this.method = method;
        this.random = new Random(seed);
    }

    FallingPlate with(Made sample) {
        samples.add(sample);
        return this;
    }

    /** NADH that is truly left in a sample. */
    double left(Made sample) {
        return nadh - sample.usedBefore() - sample.netDeltaA() - BLANK_DELTA_A;
    }

    Assessment assess() throws InputException {
        Map<Well, double[]> reads = new HashMap<>();
        StringBuilder layout = new StringBuilder("tallywell: layout/1\nname: made\nplate: 96\nwells:\n");
        for (int row = 0; row < 8; row++) {
            layout.append("  ").append((char) ('A' + row)).append(":");
            for (int column = 0; column < 12; column++) {
                int slot = row * 6 + column / 2;
                Well well = new Well(row, column);
                if (slot < 4) {
                    layout.append(" o");
                    reads.put(well, reads(new Made("", 1, 0, 0, 0)));
                } else if (slot - 4 < samples.size()) {
                    layout.append(' ').append(slot - 3);
                    reads.put(well, reads(samples.get(slot - 4)));
                } else {
                    layout.append(" .");
                }
            }
            layout.append('\n');
        }
        layout.append("legend:\n  o: {role: blank}\n");
        return new Assessor().assess(new Workup().analyse(assay(layout.toString(), reads)));
    }

    private double[] reads(Made sample) {
        double before = Math.max(0, nadh - sample.usedBefore());
        double after = Math.max(0, before - BLANK_DELTA_A - sample.netDeltaA());
        double still = plate + sample.colour();
        return new double[] {
            before + still + NOISE * random.nextGaussian(), after + still + NOISE * random.nextGaussian()
        };
    }

    private Assay assay(String layout, Map<Well, double[]> reads) throws InputException {
        List<Taken> taken = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            ReadingSeries.Builder series = ReadingSeries.endPoint(new PlateFormat(8, 12));
            int index = i;
            reads.forEach((well, values) -> series.add(well, values[index]));
            taken.add(new Taken("reading " + i, i == 1, List.of(), OptionalDouble.empty(), series.build()));
        }
        List<Sample> list = new ArrayList<>();
        for (int i = 0; i < samples.size(); i++) {
            Sample plain = Sample.plain(i + 1);
            list.add(new Sample(
                    i + 1,
                    samples.get(i).name(),
                    new Dilution(samples.get(i).dilution()),
                    plain.volumeUl(),
                    plain.solid(),
                    plain.densityGPerMl(),
                    "",
                    "",
                    ""));
        }
        try {
            Path file = Files.createTempFile("layout", ".yaml");
            Files.writeString(file, layout);
            Assay assay = new Assay(
                    "run.yaml",
                    "",
                    "",
                    "",
                    new MethodReader().parse(Path.of("method.yaml"), method),
                    new LayoutReader().read(file),
                    SampleList.of(list),
                    taken,
                    Map.of(),
                    Map.of());
            Files.delete(file);
            return assay;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
