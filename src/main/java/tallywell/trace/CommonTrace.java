package tallywell.trace;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The residuals of many wells put together, pass by pass over the plate, over the passes that eight wells or more have in
 * common.
 */
final class CommonTrace {
    private final List<FinishedResiduals> residuals;
    private final int[] shared;
    private final double[] standardised;
    private final double[] plain;
    private final double[] times;
    private final int[] count;

    private CommonTrace(List<FinishedResiduals> residuals, int passes) {
        this.residuals = residuals;
        standardised = new double[passes];
        plain = new double[passes];
        times = new double[passes];
        count = new int[passes];
        residuals.forEach(this::add);
        shared = IntStream.range(0, passes)
                .filter(pass -> count[pass] >= CommonDrift.FEWEST)
                .toArray();
    }

    /** Puts wells together that are enough each. */
    static CommonTrace of(List<FinishedResiduals> residuals) {
        int passes =
                residuals.stream().mapToInt(FinishedResiduals::lastPass).max().orElse(-1) + 1;
        return new CommonTrace(residuals, passes);
    }

    private void add(FinishedResiduals well) {
        double scatter = well.scatter();
        for (int k = 0; k < well.size(); k++) {
            int pass = well.pass(k);
            standardised[pass] += well.value(k) / scatter;
            plain[pass] += well.value(k);
            times[pass] += well.timeS(k);
            count[pass]++;
        }
    }

    /** How many passes are shared. */
    int passes() {
        return shared.length;
    }

    /** How many wells it rests on. */
    int wells() {
        return residuals.size();
    }

    /** Mean times of the passes in s from the trigger. */
    double[] times() {
        return Arrays.stream(shared)
                .mapToDouble(pass -> times[pass] / count[pass])
                .toArray();
    }

    /** Sums of standardised residuals over the roots of how many, of variance 1 where wells are independent. */
    double[] standardised() {
        return Arrays.stream(shared)
                .mapToDouble(pass -> standardised[pass] / Math.sqrt(count[pass]))
                .toArray();
    }

    /** Mean residuals in absorbance. */
    double[] mean() {
        return Arrays.stream(shared)
                .mapToDouble(pass -> plain[pass] / count[pass])
                .toArray();
    }

    /** Share of the wells that go along with the mean of the others. */
    double shareOfWells() {
        Votes votes = new Votes();
        double[] mean = byPass(meanStandardised());
        for (FinishedResiduals well : residuals) {
            double[] own = new double[mean.length];
            for (int pass : shared) {
                own[pass] = 1 / (well.scatter() * count[pass]);
            }
            well.vote(votes, mean, own);
        }
        return votes.share();
    }

    /** Share of the wells that go along with the bend of the mean; what is their own of a bend hardly counts. */
    double shareOfWellsThatBend() {
        Votes votes = new Votes();
        double[] bend = byPass(bendOf(times(), meanStandardised()));
        double[] own = new double[bend.length];
        for (FinishedResiduals well : residuals) {
            well.vote(votes, bend, own);
        }
        return votes.share();
    }

    private double[] meanStandardised() {
        return Arrays.stream(shared)
                .mapToDouble(pass -> standardised[pass] / count[pass])
                .toArray();
    }

    /** By pass, 0 where too few wells were read. */
    private double[] byPass(double[] ofShared) {
        double[] all = new double[count.length];
        for (int k = 0; k < shared.length; k++) {
            all[shared[k]] = ofShared[k];
        }
        return all;
    }

    /** The part of a series that t² and t³ describe beyond a line. */
    static double[] bendOf(double[] t, double[] y) {
        double[][] basis = new double[4][];
        double[] bend = new double[t.length];
        double middle = (t[0] + t[t.length - 1]) / 2;
        double half = (t[t.length - 1] - t[0]) / 2;
        for (int degree = 0; degree < basis.length; degree++) {
            int power = degree;
            double[] v = Arrays.stream(t)
                    .map(each -> Math.pow((each - middle) / half, power))
                    .toArray();
            for (int before = 0; before < degree; before++) {
                addTo(v, basis[before], -Span.dot(v, basis[before]));
            }
            double norm = Math.sqrt(Span.dot(v, v));
            basis[degree] = Arrays.stream(v).map(each -> each / norm).toArray();
            if (degree > 1) {
                addTo(bend, basis[degree], Span.dot(y, basis[degree]));
            }
        }
        return bend;
    }

    private static void addTo(double[] sum, double[] v, double factor) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] += factor * v[i];
        }
    }
}
