package tallywell.workup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Quantity;

/**
 * Made-up plates of 96 wells read before and after the trigger. It knows nothing of how the program calculates.
 *
 * <p>Wells stand as contents in replicates, scattered over the plate: the first is a blank, then standards, then samples of ΔA 0.02 to 1.1. A third of the
 * samples is coloured, by 0.05 to 0.4, half of these are turbid, too. A falling assay starts from 0.85 of indicator, whose volume has its own error.
 *
 * @param replicates wells of each content
 * @param contents how many, blanks included
 * @param blanks how many wells are blanks
 * @param falls whether the signal falls
 * @param wells standard deviation of what a well adds to every reading, in absorbance
 * @param noise standard deviation of a reading
 * @param volume standard deviation of the volume of sample, as a part of it
 * @param bubbles part of the wells that have a bubble in one of the readings, of 0.01 to 0.15
 * @param drift of the reader from one reading to the next, in absorbance; half of it as a slope over the columns
 * @param settles part of the turbidity that is gone at the later reading
 * @param readings of each well in either file; more than one are 15 s apart
 */
record TwoReadings(
        int replicates,
        int contents,
        int blanks,
        boolean falls,
        double wells,
        double noise,
        double volume,
        double bubbles,
        double drift,
        double settles,
        int readings) {
    static final PlateFormat FORMAT = PlateFormat.P96;

    /** Both readings of one plate. */
    record Pair(ReadingSeries before, ReadingSeries after) {}

    TwoReadings withWells(double other) {
        return new TwoReadings(
                replicates, contents, blanks, falls, other, noise, volume, bubbles, drift, settles, readings);
    }

    /** Where each content stands, the same for all plates of a study; blanks are content 0, wells without one -1. */
    private int[] places() {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < blanks; i++) {
            all.add(0);
        }
        for (int content = 1; content < contents; content++) {
            for (int i = 0; i < replicates; i++) {
                all.add(content);
            }
        }
        while (all.size() < FORMAT.wells()) {
            all.add(-1);
        }
        Collections.shuffle(all, new Random(11));
        return all.stream().mapToInt(Integer::intValue).toArray();
    }

    Layout layout() {
        int[] places = places();
        return new Layout("made", WellMap.of(FORMAT, well -> content(places[FORMAT.indexOf(well)])));
    }

    private static Content content(int number) {
        if (number < 0) {
            return new Content.Unused();
        }
        if (number == 0) {
            return new Content.Blank("o", "", true);
        }
        if (number <= 3) {
            return new Content.Standard("s" + number, "", new PerAnalyte(Map.<String, Quantity>of()));
        }
        return new Content.Sample(number - 3);
    }

    /** Samples that several plates may hold. */
    record Samples(double[] change, double[] colour, double[] turbid) {}

    Samples samples(Random random) {
        double[] change = new double[contents];
        double[] colour = new double[contents];
        double[] turbid = new double[contents];
        for (int i = 1; i < contents; i++) {
            change[i] = i <= 3 ? 0.3 * i : Math.exp(Math.log(0.02) + random.nextDouble() * Math.log(40));
            if (i > 3 && random.nextInt(3) == 0) {
                colour[i] = 0.05 + 0.35 * random.nextDouble();
                turbid[i] = random.nextBoolean() ? 0.05 + 0.1 * random.nextDouble() : 0;
            }
        }
        return new Samples(change, colour, turbid);
    }

    Pair draw(Samples samples, Random random) {
        int[] places = places();
        ReadingSeries.Builder before = builder();
        ReadingSeries.Builder after = builder();
        double level = drift * random.nextGaussian();
        double slope = drift * random.nextGaussian() / 12;
        for (Well well : FORMAT.all()) {
            int content = places[FORMAT.indexOf(well)];
            if (content >= 0) {
                double pipetted = 1 + volume * random.nextGaussian();
                double turbid = samples.turbid()[content] * (1 + 0.1 * random.nextGaussian());
                double clear = 0.09
                        + wells * random.nextGaussian()
                        + (falls ? 0.85 * (1 + 0.007 * random.nextGaussian()) : 0)
                        + samples.colour()[content] * pipetted;
                double change = samples.change()[content] * pipetted * (1 + 0.003 * random.nextGaussian());
                double own = 0.001 * random.nextGaussian();
                boolean bubble = random.nextDouble() < bubbles;
                boolean early = random.nextBoolean();
                double size = bubble ? 0.01 + 0.14 * random.nextDouble() : 0;
                read(before, well, clear + turbid + (early ? size : 0), random);
                read(
                        after,
                        well,
                        clear
                                + turbid * (1 - settles)
                                + (falls ? -change : change)
                                + own
                                + level
                                + slope * well.column()
                                + (early ? 0 : size),
                        random);
            }
        }
        return new Pair(before.build(), after.build());
    }

    private ReadingSeries.Builder builder() {
        return readings == 1 ? ReadingSeries.endPoint(FORMAT) : ReadingSeries.timed(FORMAT);
    }

    private void read(ReadingSeries.Builder series, Well well, double absorbance, Random random) {
        double[] values = IntStream.range(0, readings)
                .mapToDouble(i -> Math.round(1e4 * (absorbance + noise * random.nextGaussian())) / 1e4)
                .toArray();
        if (readings == 1) {
            series.add(well, values[0]);
        } else {
            double[] times =
                    IntStream.range(0, readings).mapToDouble(i -> 15.0 * i).toArray();
            series.add(well, times, values, null);
        }
    }

    /** How often each finding comes out, in the order of the findings. */
    double[] rates(int plates, boolean other, boolean sameSamples, long seed) {
        Random random = new Random(seed);
        int[] counts = new int[PlatePattern.Finding.values().length];
        Layout layout = layout();
        for (int i = 0; i < plates; i++) {
            Samples samples = samples(random);
            Pair one = draw(samples, random);
            Pair two = other ? draw(sameSamples ? samples : samples(random), random) : one;
            PlatePattern.Finding finding = PlatePattern.of(layout, well -> true, one.before(), two.after())
                    .map(PlatePattern::finding)
                    .orElse(PlatePattern.Finding.OPEN);
            counts[finding.ordinal()]++;
        }
        return Arrays.stream(counts)
                .mapToDouble(count -> (double) count / plates)
                .toArray();
    }
}
