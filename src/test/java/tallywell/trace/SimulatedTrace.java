package tallywell.trace;

import java.util.Arrays;
import java.util.Random;

/**
 * Traces of a well as a reaction with creep would give them, and how well their change could be known at best.
 *
 * <p>Nothing here is shared with the code under test: the integrated law is solved by Newton's method on its implicit
 * form, lags by quadrature, and the Cramér-Rao bound by numerical derivatives of the mean trace.
 *
 * @param kinetics law of the reaction
 * @param change whole change in absorbance
 * @param first rate constant per s of first order, or Km as a part of the change
 * @param vmaxPerS Vmax in absorbance per s; unused by first order
 * @param lag kind of lag
 * @param lagS its time constant in s; 0 for none
 * @param creepPerMin creep in absorbance per min
 * @param noise scatter of a reading of absorbance 0
 * @param carry correlation of the noise of neighbours
 * @param minutes length after the trigger
 * @param intervalS time between readings in s
 * @param baselineReadings readings before the trigger
 * @param before absorbance before the trigger
 * @param fault what is wrong with the trace, beyond the model
 */
public record SimulatedTrace(
        Kinetics kinetics,
        double change,
        double first,
        double vmaxPerS,
        Lag lag,
        double lagS,
        double creepPerMin,
        double noise,
        double carry,
        double minutes,
        double intervalS,
        int baselineReadings,
        double before,
        Fault fault) {
    /** Law of the reaction. */
    public enum Kinetics {
        /** dP/dt = k S. */
        FIRST_ORDER,
        /** dP/dt = Vmax S / (Km + S). */
        MICHAELIS_MENTEN,
        /** Competitive inhibition by the product, Ki equal to Km: dP/dt = Vmax S / (Km (1 + P/Ki) + S). */
        PRODUCT_INHIBITION
    }

    /** How the signal lags behind the reaction. */
    public enum Lag {
        /** One intermediate that is used up in first order. */
        COUPLED,
        /** The rate comes up as 1 - exp(-t / lag). */
        INDUCTION,
        /** Nothing happens before the lag is over. */
        DELAY,
        /** Two intermediates one after the other, half the lag each. */
        TWO_STEPS
    }

    /** What is wrong with a trace. */
    public enum Fault {
        NONE,
        /** Creep that dies away with a time constant of 10 min. */
        SATURATING_CREEP,
        /** The lamp wanders by 2 mA over the whole series. */
        LAMP_DRIFT,
        /** The trace jumps by 10 mA somewhere after the trigger. */
        JUMP
    }

    /** Reading noise that grows with absorbance. */
    public static final double RELATIVE_NOISE = 0.001;

    private static final double QUADRATURE_S = 0.25;

    /** A well of the same plate in which nothing reacts. */
    public SimulatedTrace blank() {
        return new SimulatedTrace(
                Kinetics.FIRST_ORDER,
                1e-6,
                0.03,
                0,
                lag,
                0,
                creepPerMin,
                noise,
                carry,
                minutes,
                intervalS,
                baselineReadings,
                before,
                fault);
    }

    /** Times after the trigger in s. */
    public double[] times() {
        int n = (int) Math.round(60 * minutes / intervalS);
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = intervalS * (i + 1);
        }
        return t;
    }

    /** Times of the baseline in s. */
    public double[] baselineTimes() {
        double[] t = new double[baselineReadings];
        for (int i = 0; i < t.length; i++) {
            t[i] = -intervalS * (t.length - 1 - i);
        }
        return t;
    }

    /** The part converted at each time. */
    public double[] converted(double[] t) {
        if (lagS == 0) {
            return Arrays.stream(t).map(this::reacted).toArray();
        }
        return switch (lag) {
            case DELAY ->
                Arrays.stream(t).map(each -> reacted(Math.max(0, each - lagS))).toArray();
            case INDUCTION ->
                Arrays.stream(t)
                        .map(each -> reacted(each + lagS * Math.expm1(-each / lagS)))
                        .toArray();
            case COUPLED -> passedOn(t, lagS, 1);
            case TWO_STEPS -> passedOn(t, lagS / 2, 2);
        };
    }

    /** The absorbance after the trigger without noise. */
    public double[] mean(double[] t) {
        double[] y = converted(t);
        for (int i = 0; i < y.length; i++) {
            double creep = fault == Fault.SATURATING_CREEP
                    ? 10 * creepPerMin * -Math.expm1(-t[i] / 600)
                    : creepPerMin * t[i] / 60;
            y[i] = before + change * y[i] + creep;
        }
        return y;
    }

    /** The burst still to come at a time in s, in absorbance. */
    public double burstLeft(double timeS) {
        return change * (1 - converted(new double[] {timeS})[0]);
    }

    /** The burst still to come at the last reading. */
    public double burstLeftAtEnd() {
        return burstLeft(60 * minutes);
    }

    /** Newton's method on the implicit law, from a bracket. */
    private double reacted(double t) {
        if (kinetics == Kinetics.FIRST_ORDER) {
            return -Math.expm1(-first * t);
        }
        // t vmax / change = linear p - log ln(1 - p)
        double log = kinetics == Kinetics.MICHAELIS_MENTEN ? first : 1 + first;
        double linear = kinetics == Kinetics.MICHAELIS_MENTEN ? 1 : 0;
        double goal = t * vmaxPerS / change;
        double low = 0;
        double high = goal / log;
        double v = Math.min(high, goal / (linear + log));
        for (int i = 0; i < 200; i++) {
            double f = linear * -Math.expm1(-v) + log * v - goal;
            if (f > 0) {
                high = v;
            } else {
                low = v;
            }
            double next = v - f / (linear * Math.exp(-v) + log);
            next = next > low && next < high ? next : 0.5 * (low + high);
            if (Math.abs(next - v) <= 1e-15 * v) {
                break;
            }
            v = next;
        }
        return -Math.expm1(-v);
    }

    /** p after {@code times} intermediates: each is p' = (p in - p) / tau, by exact steps of the piecewise linear input. */
    private double[] passedOn(double[] t, double tau, int times) {
        double end = t[t.length - 1] + 1;
        int n = (int) Math.ceil(end / QUADRATURE_S) + 1;
        double[] p = new double[n];
        for (int i = 0; i < n; i++) {
            p[i] = reacted(i * QUADRATURE_S);
        }
        double e = Math.exp(-QUADRATURE_S / tau);
        double mid = (1 - e) * tau / QUADRATURE_S;
        for (int k = 0; k < times; k++) {
            double[] out = new double[n];
            for (int i = 1; i < n; i++) {
                out[i] = e * out[i - 1] + (mid - e) * p[i - 1] + (1 - mid) * p[i];
            }
            p = out;
        }
        double[] at = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            double x = Math.max(0, t[i]) / QUADRATURE_S;
            int j = Math.min(n - 2, (int) x);
            at[i] = p[j] + (x - j) * (p[j + 1] - p[j]);
        }
        return at;
    }

    private double sd(double absorbance) {
        return Math.hypot(noise, RELATIVE_NOISE * absorbance);
    }

    /** The series of one simulated well. */
    public record Drawn(Baseline baseline, Series after) {}

    /** Draws wells of one kind, the mean trace being worked out once. */
    public Source source() {
        return new Source(this);
    }

    /** Draws wells of one kind. */
    public static final class Source {
        private final SimulatedTrace kind;
        private final double[] baselineTimes;
        private final double[] times;
        private final double[] mean;

        private Source(SimulatedTrace kind) {
            this.kind = kind;
            baselineTimes = kind.baselineTimes();
            times = kind.times();
            mean = kind.mean(times);
        }

        /** One well, its lamp drifting by itself. */
        public Drawn draw(Random random) {
            return draw(random, 2 * Math.PI * random.nextDouble());
        }

        /**
         * One well.
         *
         * @param phase of the drift of the lamp, the same for all wells of a plate
         */
        public Drawn draw(Random random, double phase) {
            int nb = baselineTimes.length;
            double[] all = new double[nb + times.length];
            double last = random.nextGaussian();
            double fresh = Math.sqrt(1 - kind.carry * kind.carry);
            double whole = times[times.length - 1] - baselineTimes[0];
            int jump = random.nextInt(times.length);
            double sign = random.nextBoolean() ? 0.010 : -0.010;
            for (int i = 0; i < all.length; i++) {
                double t = i < nb ? baselineTimes[i] : times[i - nb];
                double y = i < nb ? kind.before : mean[i - nb];
                if (kind.fault == Fault.LAMP_DRIFT) {
                    y += 0.001 * Math.sin(phase + 2 * Math.PI * t / whole);
                }
                if (kind.fault == Fault.JUMP && i - nb >= jump) {
                    y += sign;
                }
                all[i] = y + kind.sd(y) * last;
                last = kind.carry * last + fresh * random.nextGaussian();
            }
            return new Drawn(
                    new Baseline.Read(Series.of(baselineTimes, Arrays.copyOf(all, nb)), BeforeRule.MEAN),
                    Series.of(times, Arrays.copyOfRange(all, nb, all.length)));
        }
    }

    /**
     * The Cramér-Rao bound on the standard deviation of the change: the parameters of the law, the lag if there is one,
     * baseline and creep all unknown, the noise known.
     */
    public double bound() {
        double[] parameters = parameters();
        double[] tb = baselineTimes();
        double[] t = times();
        double[][] rows = new double[parameters.length][];
        for (int k = 0; k < parameters.length; k++) {
            double h = 1e-4 * (k < 3 ? Math.max(1e-3, Math.abs(parameters[k])) : parameters[k]);
            double[] up = parameters.clone();
            double[] down = parameters.clone();
            up[k] += h;
            down[k] -= h;
            double[] high = with(up).whole(tb, t);
            double[] low = with(down).whole(tb, t);
            rows[k] = new double[high.length];
            for (int i = 0; i < high.length; i++) {
                rows[k][i] = (high[i] - low[i]) / (2 * h);
            }
        }
        double[] mean = whole(tb, t);
        double fresh = Math.sqrt(1 - carry * carry);
        for (double[] row : rows) {
            for (int i = row.length - 1; i >= 0; i--) {
                double own = row[i] / sd(mean[i]);
                row[i] = i == 0 ? own : (own - carry * row[i - 1] / sd(mean[i - 1])) / fresh;
            }
        }
        return Math.sqrt(firstOfInverse(rows));
    }

    private double[] parameters() {
        boolean law = kinetics != Kinetics.FIRST_ORDER;
        double[] base = law
                ? new double[] {change, before, creepPerMin, first * change, vmaxPerS}
                : new double[] {change, before, creepPerMin, first};
        if (lagS > 0) {
            base = Arrays.copyOf(base, base.length + 1);
            base[base.length - 1] = lagS;
        }
        return base;
    }

    private SimulatedTrace with(double[] p) {
        boolean law = kinetics != Kinetics.FIRST_ORDER;
        double newLag = lagS > 0 ? p[p.length - 1] : 0;
        return new SimulatedTrace(
                kinetics,
                p[0],
                law ? p[3] / p[0] : p[3],
                law ? p[4] : 0,
                lag,
                newLag,
                p[2],
                noise,
                carry,
                minutes,
                intervalS,
                baselineReadings,
                p[1],
                fault);
    }

    private double[] whole(double[] tb, double[] t) {
        double[] all = new double[tb.length + t.length];
        Arrays.fill(all, 0, tb.length, before);
        System.arraycopy(mean(t), 0, all, tb.length, t.length);
        return all;
    }

    /** Element (0, 0) of (rows rowsᵀ)⁻¹, by orthogonalising row 0 against the others. */
    private static double firstOfInverse(double[][] rows) {
        double[][] q = new double[rows.length][];
        for (int k = 1; k <= rows.length; k++) {
            int row = k % rows.length;
            double[] v = rows[row].clone();
            double length = Math.sqrt(dot(v, v));
            for (int pass = 0; pass < 2; pass++) {
                for (int j = 1; j < k; j++) {
                    double d = dot(v, q[j]);
                    for (int i = 0; i < v.length; i++) {
                        v[i] -= d * q[j][i];
                    }
                }
            }
            double norm = Math.sqrt(dot(v, v));
            if (row == 0) {
                return norm > 1e-9 * length ? 1 / (norm * norm) : Double.POSITIVE_INFINITY;
            }
            q[k] = v;
            for (int i = 0; i < v.length; i++) {
                // A direction that moves nothing (a burst over before the first reading) takes nothing away.
                v[i] = norm > 1e-9 * length && norm > 1e-6 ? v[i] / norm : 0;
            }
        }
        throw new AssertionError();
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
