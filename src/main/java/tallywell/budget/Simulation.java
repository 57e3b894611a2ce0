package tallywell.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Propagation of distributions by random draws.
 *
 * <p>Trials are drawn in blocks of {@value #BLOCK}, each block with a generator of its own that follows from the seed and
 * the number of the block. So the same seed gives the same numbers however many processors share the work.
 *
 * <p>Source: JCGM 101:2008, sections 5 to 7: standard deviation of the draws, and the interval that leaves equal parts
 * of them on both sides.
 */
public final class Simulation {
    private static final int BLOCK = 1000;

    /** So many numbers are kept at a time; 160 MB. With more, the same draws are made again for the outputs left. */
    private static final int KEPT = 20_000_000;

    private Simulation() {}

    /** One draw of all outputs. */
    @FunctionalInterface
    public interface Trial {
        /**
         * Draws.
         *
         * @param random where randomness comes from
         * @param outputs takes the outputs; NaN where this draw has none
         */
        void draw(SplittableRandom random, double[] outputs);
    }

    /** Makes a trial for one thread; a trial may keep working space of its own. */
    @FunctionalInterface
    public interface Trials {
        /** A trial that no other thread uses. */
        Trial trial();
    }

    /**
     * What the draws of one output came to.
     *
     * @param mean of the draws
     * @param standardUncertainty their standard deviation
     * @param low lower end of the 95 % interval
     * @param high upper end
     * @param lost draws in which the output had no value
     */
    public record Output(double mean, double standardUncertainty, double low, double high, int lost) {}

    /**
     * Runs.
     *
     * @param trials how many draws, at least 1000
     * @param seed any number; the same one gives the same draws
     * @param outputs how many outputs a draw has
     * @param of makes the trials
     */
    public static List<Output> run(int trials, long seed, int outputs, Trials of) {
        return run(trials, seed, outputs, of, KEPT);
    }

    static List<Output> run(int trials, long seed, int outputs, Trials of, int kept) {
        if (!(trials >= BLOCK)) {
            throw new IllegalArgumentException("trials must be at least " + BLOCK + " but was " + trials);
        }
        List<Output> all = new ArrayList<>();
        int atATime = Math.max(1, kept / trials);
        for (int from = 0; from < outputs; from += atATime) {
            double[][] draws = draws(trials, seed, outputs, of, from, Math.min(outputs, from + atATime));
            all.addAll(Arrays.stream(draws).parallel().map(Simulation::output).toList());
        }
        return all;
    }

    /** The draws of the outputs from one to before another, a row each. */
    private static double[][] draws(int trials, long seed, int outputs, Trials of, int from, int to) {
        double[][] draws = new double[to - from][trials];
        int blocks = (trials + BLOCK - 1) / BLOCK;
        long[] seeds = new SplittableRandom(seed).longs(blocks).toArray();
        IntStream.range(0, blocks).parallel().forEach(block -> {
            Trial trial = of.trial();
            SplittableRandom random = new SplittableRandom(seeds[block]);
            double[] row = new double[outputs];
            for (int i = block * BLOCK; i < Math.min(trials, (block + 1) * BLOCK); i++) {
                trial.draw(random, row);
                for (int k = from; k < to; k++) {
                    draws[k - from][i] = row[k];
                }
            }
        });
        return draws;
    }

    private static Output output(double[] draws) {
        double[] values =
                Arrays.stream(draws).filter(each -> !Double.isNaN(each)).toArray();
        int n = values.length;
        if (n < 2) {
            throw new IllegalStateException("no draw gave a value");
        }
        double mean = Arrays.stream(values).average().orElseThrow();
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        Arrays.sort(values);
        // JCGM 101, 7.7.2: q of the sorted draws inside, (n - q) / 2 below.
        int inside = Math.min(n - 1, (int) (ResultBudget.COVERAGE * n + 0.5));
        int below = (n - inside) / 2;
        return new Output(
                mean,
                Math.sqrt(squares / (n - 1)),
                values[below],
                values[Math.min(n - 1, below + inside)],
                draws.length - n);
    }

    /**
     * A draw of s·√(ν/χ²): the standard deviation as far as a sample of ν degrees of freedom knows it, over what the
     * sample showed. A normal draw times this has Student's distribution (JCGM 101, 6.4.9).
     *
     * @param degreesOfFreedom positive; infinite gives 1
     */
    static double scale(SplittableRandom random, double degreesOfFreedom) {
        if (degreesOfFreedom > 1e6) {
            return 1;
        }
        return Math.sqrt(degreesOfFreedom / (2 * gamma(random, degreesOfFreedom / 2)));
    }

    /**
     * A draw from the gamma distribution with scale 1.
     *
     * <p>Source: Marsaglia and Tsang (2000), A simple method for generating gamma variables, ACM Trans. Math. Softw. 26,
     * 363 (from memory); below shape 1 by their power of a uniform draw.
     */
    static double gamma(SplittableRandom random, double shape) {
        if (shape < 1) {
            return gamma(random, shape + 1) * Math.pow(1 - random.nextDouble(), 1 / shape);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double z = random.nextGaussian();
            double v = 1 + c * z;
            if (v > 0) {
                double cube = v * v * v;
                if (Math.log(1 - random.nextDouble()) < z * z / 2 + d - d * cube + d * Math.log(cube)) {
                    return d * cube;
                }
            }
        }
    }
}
