package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.trace.ReactionLaw.Lag;

/** The integrated law against its differential equation, integrated by the classical Runge-Kutta method. */
class ReactionLawTest {
    private static final double CHANGE = 0.8;

    /** Rates of change of substrate, intermediate and product. */
    private interface Rates {
        void of(double t, double[] state, double[] rates);
    }

    /** Runge and Kutta's method of order 4 with so many steps that halving them changes nothing at 1e-12. */
    private static double[] integrated(Rates rates, double[] start, double end, int steps) {
        double[] y = start.clone();
        double h = end / steps;
        int n = y.length;
        double[][] k = new double[4][n];
        double[] at = new double[n];
        for (int step = 0; step < steps; step++) {
            double t = step * h;
            rates.of(t, y, k[0]);
            for (int stage = 1; stage < 4; stage++) {
                double part = stage == 3 ? h : h / 2;
                for (int i = 0; i < n; i++) {
                    at[i] = y[i] + part * k[stage - 1][i];
                }
                rates.of(t + part, at, k[stage]);
            }
            for (int i = 0; i < n; i++) {
                y[i] += h / 6 * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
            }
        }
        return y;
    }

    @ParameterizedTest
    @CsvSource({
        // Km as a part of the change, Vmax per s
        "0.05, 0.002",
        "0.2, 0.002",
        "1, 0.005",
        "10, 0.02",
        "1000, 8"
    })
    void integratedMichaelisMentenLawAgreesWithItsDifferentialEquation(double part, double vmax) {
        double km = part * CHANGE;
        ReactionLaw law = ReactionLaw.ofConstants(CHANGE, km, vmax, Lag.INDUCTION, 0);
        for (double t : new double[] {10, 100, 300, 500, 1000}) {
            double[] s = integrated((u, y, r) -> r[0] = -vmax * y[0] / (km + y[0]), new double[] {CHANGE}, t, 40_000);

            assertThat(law.left(t) * CHANGE).isCloseTo(s[0], within(1e-10));
        }
    }

    @Test
    void competitiveInhibitionByTheProductIsANegativeBend() {
        // dS/dt = -Vmax S / (Km (1 + P/Ki) + S): a = (1 - Km/Ki) S0, b = Km (1 + S0/Ki), so a < 0 where Ki < Km.
        double km = 0.4;
        double ki = 0.25;
        double vmax = 0.006;
        double a = (1 - km / ki) * CHANGE / vmax;
        double b = km * (1 + CHANGE / ki) / vmax;
        double half = 0.5 * a + b * Math.log(2);
        double bend = -Math.log1p(-0.5 * a / half);
        ReactionLaw law = new ReactionLaw(half, bend, Lag.INDUCTION, 0);

        assertThat(bend).isNegative();
        for (double t : new double[] {10, 100, 300, 1000}) {
            double[] s = integrated(
                    (u, y, r) -> r[0] = -vmax * y[0] / (km * (1 + (CHANGE - y[0]) / ki) + y[0]),
                    new double[] {CHANGE},
                    t,
                    40_000);
            assertThat(law.left(t) * CHANGE).isCloseTo(s[0], within(1e-10));
        }
    }

    @Test
    void inductionLagAgreesWithItsDifferentialEquation() {
        ReactionLaw law = ReactionLaw.ofConstants(CHANGE, 0.1, 0.003, Lag.INDUCTION, 40);
        for (double t : new double[] {10, 60, 200, 500}) {
            double[] s = integrated(
                    (u, y, r) -> r[0] = -0.003 * -Math.expm1(-u / 40) * y[0] / (0.1 + y[0]),
                    new double[] {CHANGE},
                    t,
                    40_000);
            assertThat(law.left(t) * CHANGE).isCloseTo(s[0], within(1e-10));
        }
    }

    /** The integral over the intermediate is by quadrature from reading to reading: 1e-5 of the change is asked. */
    @ParameterizedTest
    @CsvSource({"0.02, 0.002, 30", "0.1, 0.003, 60", "0.8, 0.01, 20", "0.8, 0.03, 8"})
    void coupledLagAgreesWithItsDifferentialEquation(double km, double vmax, double lag) {
        ReactionLaw law = ReactionLaw.ofConstants(CHANGE, km, vmax, Lag.COUPLED, lag);
        double[] t = new double[60];
        for (int i = 0; i < t.length; i++) {
            t[i] = 15.0 * (i + 1);
        }
        double[] left = new double[60];
        law.fill(t, left, new double[60], new double[60], new double[60]);
        for (int i = 0; i < t.length; i += 7) {
            assertThat(law.left(t[i])).isCloseTo(left[i], within(1e-4));
            double[] y = integrated(
                    (u, state, r) -> {
                        r[0] = -vmax * state[0] / (km + state[0]);
                        r[1] = -r[0] - state[1] / lag;
                    },
                    new double[] {CHANGE, 0},
                    t[i],
                    20_000);
            assertThat(left[i] * CHANGE).isCloseTo(y[0] + y[1], within(1e-5 * CHANGE));
        }
    }

    @Test
    void firstOrderIsTheLimitOfALargeMichaelisConstant() {
        for (double t = 0; t < 600; t += 7) {
            double exponential = Math.exp(-0.012 * t);
            ReactionLaw saturable =
                    ReactionLaw.ofConstants(CHANGE, 1e7 * CHANGE, 0.012 * 1e7 * CHANGE, Lag.INDUCTION, 0);
            assertThat(saturable.left(t)).isCloseTo(exponential, within(1e-7));
            assertThat(new ReactionLaw(Math.log(2) / 0.012, 0, Lag.INDUCTION, 0).left(t))
                    .isCloseTo(exponential, within(1e-14));
        }
    }

    @Test
    void nothingOverflowsWhereTheReactionStopsDead() {
        ReactionLaw law = ReactionLaw.ofConstants(2, 1e-6, 0.01, Lag.INDUCTION, 0);

        assertThat(law.left(100)).isCloseTo(0.5, within(1e-5));
        assertThat(law.left(199)).isCloseTo(0.005, within(1e-5));
        assertThat(law.left(1e6)).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        "80, 0.9, INDUCTION, 0",
        "80, 0.9, INDUCTION, 25",
        "80, -0.3, INDUCTION, -4",
        "40, 3.0, COUPLED, 20",
        "60, 0.5, COUPLED, 50",
        "60, 0.0, COUPLED, -3"
    })
    void derivativesAreThoseOfTheLaw(double half, double bend, Lag lag, double lagS) {
        double[] t = {15, 30, 45, 60, 90, 120, 240, 480};
        int n = t.length;
        double[][] d = new double[3][n];
        new ReactionLaw(half, bend, lag, lagS).fill(t, new double[n], d[0], d[1], d[2]);
        double h = 1e-5;
        double[][] numeric = {
            difference(
                    t,
                    new ReactionLaw(half * Math.exp(h), bend, lag, lagS),
                    new ReactionLaw(half * Math.exp(-h), bend, lag, lagS),
                    h),
            difference(t, new ReactionLaw(half, bend + h, lag, lagS), new ReactionLaw(half, bend - h, lag, lagS), h),
            difference(t, new ReactionLaw(half, bend, lag, lagS + h), new ReactionLaw(half, bend, lag, lagS - h), h)
        };
        // Those of the coupled lag share the quadrature of the law but for the end of each step, and only steer the
        // search: 5e-3 is asked there.
        double tolerance = lag == Lag.COUPLED && lagS > 0 ? 5e-3 : 1e-8;
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < n; i++) {
                assertThat(d[k][i]).as("derivative %d at %s s", k, t[i]).isCloseTo(numeric[k][i], within(tolerance));
            }
        }
    }

    private static double[] difference(double[] t, ReactionLaw up, ReactionLaw down, double h) {
        int n = t.length;
        double[] high = new double[n];
        double[] low = new double[n];
        up.fill(t, high, new double[n], new double[n], new double[n]);
        down.fill(t, low, new double[n], new double[n], new double[n]);
        double[] slope = new double[n];
        for (int i = 0; i < n; i++) {
            slope[i] = (high[i] - low[i]) / (2 * h);
        }
        return slope;
    }

    @Test
    void constantsComeBack() {
        ReactionLaw law = ReactionLaw.ofConstants(CHANGE, 0.15, 0.004, Lag.INDUCTION, 0);

        assertThat(law.michaelisConstant(CHANGE).getAsDouble()).isCloseTo(0.15, within(1e-12));
        assertThat(law.vmaxPerS(CHANGE).getAsDouble()).isCloseTo(0.004, within(1e-14));
    }
}
