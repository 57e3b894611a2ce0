package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DeltaATest {
    private static final AfterRule EXTRAPOLATE = new AfterRule.Extrapolate(OptionalDouble.empty());
    private static final AfterRule LAST_READING = new AfterRule.None(OptionalDouble.empty());

    private static Baseline before(BeforeRule rule, double... absorbance) {
        double[] t = new double[absorbance.length];
        for (int i = 0; i < t.length; i++) {
            t[i] = -20.0 * (t.length - i);
        }
        return new Baseline.Read(Series.of(t, absorbance), rule);
    }

    @Nested
    class RepeatedEndPoints {
        /** Minutes, sample, blank: see the header of the file. */
        private final List<double[]> rows = rows("creep_end_points.csv");

        private Series column(int column, int from, int to) {
            double[] t = new double[to - from];
            double[] y = new double[to - from];
            for (int i = from; i < to; i++) {
                t[i - from] = 60 * rows.get(i)[0];
                y[i - from] = rows.get(i)[column];
            }
            return Series.of(t, y);
        }

        @Test
        void netChangeOfTheConstructedExampleIsExact() {
            Change sample = DeltaA.of(before(BeforeRule.MEAN, 0.1210), column(1, 0, 6), EXTRAPOLATE);
            Change blank = DeltaA.of(before(BeforeRule.MEAN, 0.0450), column(2, 0, 6), EXTRAPOLATE);

            assertThat(sample.deltaA() - blank.deltaA()).isCloseTo(0.3960, within(1e-14));
            assertThat(sample.creepPerMin().getAsDouble()).isCloseTo(0.0024, within(1e-14));
            assertThat(blank.creepPerMin().getAsDouble()).isCloseTo(0.0003, within(1e-14));
            assertThat(sample.finished().orElseThrow().from()).isZero();
            assertThat(sample.flags()).isEmpty();
        }

        @Test
        void twoReadingsGiveTheSameLineAndSayThatNothingTestsIt() {
            Change sample = DeltaA.of(before(BeforeRule.MEAN, 0.1210), column(1, 2, 4), EXTRAPOLATE);

            assertThat(sample.after()).isCloseTo(0.5230, within(1e-14));
            assertThat(sample.flags()).containsExactly(TraceFlag.CREEP_NOT_TESTED);
            assertThat(sample.uDeltaA()).isEmpty();
        }

        @Test
        void oneReadingIsTakenAsItIsAndSaysSo() {
            Change sample = DeltaA.of(before(BeforeRule.MEAN, 0.1210), Series.untimed(0.5470), EXTRAPOLATE);

            assertThat(sample.after()).isEqualTo(0.5470);
            assertThat(sample.creepPerMin()).isEmpty();
            assertThat(sample.flags()).containsExactly(TraceFlag.CREEP_NOT_MEASURED);
        }

        /** GOST R 51938-2002, annex B: readings before the change per minute is constant do not enter the line. */
        @Test
        void readingsBeforeTheChangeIsConstantStayOutOfTheLine() {
            double[] t = new double[9];
            double[] y = new double[9];
            for (int i = 0; i < 9; i++) {
                t[i] = 60.0 * (2 + 3 * i);
                y[i] = 0.5230 + 0.0024 * t[i] / 60 - 0.4020 * Math.exp(-t[i] / 75);
            }

            Change sample = DeltaA.of(before(BeforeRule.MEAN, 0.1210), Series.of(t, y), EXTRAPOLATE);

            // At 11 min 0.06 mA of the burst is left; four readings of one decimal of mA cannot do better.
            assertThat(sample.finished().orElseThrow().from()).isBetween(2, 4);
            assertThat(sample.after()).isCloseTo(0.5230, within(2e-4));
        }
    }

    @Nested
    class Before {
        private final Series after = Series.untimed(0.5);

        @Test
        void meanLineAndLastOfTheSameReadings() {
            double[] drifting = {0.100, 0.102, 0.104, 0.106};

            assertThat(DeltaA.of(before(BeforeRule.MEAN, drifting), after, LAST_READING)
                            .before())
                    .isCloseTo(0.103, within(1e-15));
            assertThat(DeltaA.of(before(BeforeRule.LINE, drifting), after, LAST_READING)
                            .before())
                    .isCloseTo(0.108, within(1e-15));
            assertThat(DeltaA.of(before(BeforeRule.LAST, drifting), after, LAST_READING)
                            .before())
                    .isEqualTo(0.106);
        }

        @Test
        void driftIsFlaggedUnlessTheRuleIsALine() {
            double[] drifting = {0.1000, 0.1009, 0.1021, 0.1030, 0.1041, 0.1049};

            assertThat(DeltaA.of(before(BeforeRule.MEAN, drifting), after, LAST_READING)
                            .flags())
                    .containsExactly(TraceFlag.BASELINE_DRIFTS);
            assertThat(DeltaA.of(before(BeforeRule.LAST, drifting), after, LAST_READING)
                            .flags())
                    .containsExactly(TraceFlag.BASELINE_DRIFTS);
            assertThat(DeltaA.of(before(BeforeRule.LINE, drifting), after, LAST_READING)
                            .flags())
                    .isEmpty();
        }

        @Test
        void steadyNoiseIsNoDrift() {
            int flagged = 0;
            Random random = new Random(7);
            for (int trial = 0; trial < 1000; trial++) {
                double[] y = random.doubles(13).map(u -> 0).toArray();
                for (int i = 0; i < y.length; i++) {
                    y[i] = 0.1 + 0.0006 * random.nextGaussian();
                }
                Change change = DeltaA.of(before(BeforeRule.MEAN, y), after, LAST_READING);
                flagged += change.flags().contains(TraceFlag.BASELINE_DRIFTS) ? 1 : 0;
            }
            assertThat(flagged).isLessThan(20);
        }

        @Test
        void bubbleInTheBaselineIsLeftOutOfTheMeanAndFlagged() {
            double[] y = {0.1001, 0.0999, 0.1002, 0.1450, 0.1000, 0.0998, 0.1000};

            Change change = DeltaA.of(before(BeforeRule.MEAN, y), after, LAST_READING);

            assertThat(change.before()).isCloseTo(0.1000, within(1e-15));
            assertThat(change.baseline().leftOut()).containsExactly(3);
            assertThat(change.flags()).containsExactly(TraceFlag.SPIKE);
        }

        @Test
        void readingsWithoutTimesGiveTheirMean() {
            Baseline read = new Baseline.Read(Series.untimed(0.10, 0.12), BeforeRule.MEAN);

            assertThat(DeltaA.of(read, after, LAST_READING).before()).isCloseTo(0.11, within(1e-15));
        }

        @Test
        void givenValueBringsItsUncertainty() {
            Series line = Series.of(new double[] {300, 400, 500, 600}, new double[] {0.503, 0.504, 0.505, 0.506});

            Change change = DeltaA.of(new Baseline.Given(0.2, 0.003), line, EXTRAPOLATE);

            assertThat(change.deltaA()).isCloseTo(0.300, within(1e-14));
            assertThat(change.uDeltaA().getAsDouble()).isCloseTo(0.003, within(1e-12));
        }
    }

    @Nested
    class OneReading {
        private final Series after = Series.of(new double[] {60, 120, 180, 240}, new double[] {0.4, 0.5, 0.6, 0.7});

        @ParameterizedTest
        @CsvSource({"100, 0.5", "150, 0.6", "149.9, 0.5", "0, 0.4", "999, 0.7"})
        void nearestIsTakenAndTheLaterOnATie(double atS, double expected) {
            AfterRule rule = new AfterRule.None(OptionalDouble.of(atS));

            assertThat(DeltaA.of(before(BeforeRule.MEAN, 0.1), after, rule).after())
                    .isEqualTo(expected);
        }

        @Test
        void withoutATimeTheLastIsTaken() {
            Change change = DeltaA.of(before(BeforeRule.MEAN, 0.1), after, LAST_READING);

            assertThat(change.after()).isEqualTo(0.7);
            assertThat(change.reading()).hasValue(3);
        }
    }

    @Nested
    class WholeSeries {
        private static final double CREEP_PER_S = 0.0024 / 60;

        private Series trace(long seed, double rate, double noise) {
            Random random = new Random(seed);
            double[] t = new double[81];
            double[] y = new double[81];
            for (int i = 0; i < 81; i++) {
                t[i] = 15.0 * (i + 1);
                y[i] = 0.1 + 0.4 * (1 - Math.exp(-rate * t[i])) + CREEP_PER_S * t[i] + noise * random.nextGaussian();
            }
            return Series.of(t, y);
        }

        private Baseline baseline() {
            return before(BeforeRule.MEAN, 0.1003, 0.0995, 0.1004, 0.0999, 0.1002, 0.0997);
        }

        @ParameterizedTest
        @ValueSource(doubles = {0.008, 0.012, 0.02, 0.05, 0.5})
        void withoutNoiseNothingOfTheBurstIsInTheLine(double rate) {
            Change change = DeltaA.of(baseline(), trace(1, rate, 0), EXTRAPOLATE);

            // The slowest has 0.024 mA of the burst left at the last reading, and a line there carries it back tenfold.
            assertThat(change.after()).isCloseTo(0.5, within(5e-4));
        }

        @Test
        void lineIsOrdinaryLeastSquaresOverTheRunGiven() {
            Series trace = trace(2, 0.012, 0.0006);
            FinishedPart part =
                    DeltaA.of(baseline(), trace, EXTRAPOLATE).finished().orElseThrow();

            double[] line = textbookLine(trace, part);

            assertThat(part.intercept()).isCloseTo(line[0], within(1e-13));
            assertThat(part.slopePerS()).isCloseTo(line[1], within(1e-16));
        }

        @Test
        void spikeInTheFinishedPartIsLeftOutAndFlagged() {
            Series clean = trace(3, 0.02, 0.0006);
            double[] y = clean.values().clone();
            y[60] += 0.02;

            Change change = DeltaA.of(baseline(), Series.of(clean.times(), y), EXTRAPOLATE);

            assertThat(change.finished().orElseThrow().leftOut()).containsExactly(60);
            assertThat(change.flags()).containsExactly(TraceFlag.SPIKE);
            assertThat(change.finished().orElseThrow().intercept())
                    .isCloseTo(
                            textbookLine(
                                    Series.of(clean.times(), y),
                                    change.finished().orElseThrow())[0],
                            within(1e-13));
        }

        @Test
        void slowReactionIsIncomplete() {
            assertThat(DeltaA.of(baseline(), trace(4, 0.002, 0.0006), EXTRAPOLATE)
                            .flags())
                    .contains(TraceFlag.REACTION_INCOMPLETE);
        }

        @Test
        void analystsOwnStartIsHonouredAndSaid() {
            AfterRule rule = new AfterRule.Extrapolate(OptionalDouble.of(900));

            Change change = DeltaA.of(baseline(), trace(5, 0.012, 0.0006), rule);

            assertThat(change.finished().orElseThrow().from()).isEqualTo(59);
            assertThat(change.flags()).containsExactly(TraceFlag.FINISHED_BY_HAND);
        }

        @ParameterizedTest
        @ValueSource(doubles = {30, 100, 200})
        void ownStartInsideTheBurstIsCalledBent(double startS) {
            AfterRule rule = new AfterRule.Extrapolate(OptionalDouble.of(startS));

            Change change = DeltaA.of(baseline(), trace(5, 0.012, 0.0006), rule);

            assertThat(change.flags())
                    .containsExactlyInAnyOrder(TraceFlag.FINISHED_BY_HAND, TraceFlag.CREEP_NOT_CONSTANT);
        }

        /** A trigger that is written down too late leaves the begin of the burst in the baseline. */
        @ParameterizedTest
        @CsvSource({"1, false", "2, true", "5, true"})
        void burstInTheBaselineIsFlagged(int readings, boolean flagged) {
            Series whole = trace(6, 0.012, 0.0006);
            double[] before = {
                0.1003, 0.0995, 0.1004, 0.0999, 0.1002, 0.0997, 0.1001, 0.1, 0.0998, 0.1003, 0.1, 0.1, 0.1
            };
            double[] own = java.util.Arrays.copyOf(before, before.length + readings);
            System.arraycopy(whole.values(), 0, own, before.length, readings);
            Series rest = Series.of(
                    java.util.Arrays.copyOf(whole.times(), 81 - readings),
                    java.util.Arrays.copyOfRange(whole.values(), readings, 81));

            Change change = DeltaA.of(before(BeforeRule.MEAN, own), rest, EXTRAPOLATE);

            assertThat(change.flags()).contains(TraceFlag.SPIKE);
            assertThat(change.flags().contains(TraceFlag.BASELINE_DRIFTS)).isEqualTo(flagged);
        }

        @Test
        void startAfterTheLastReadingLeavesTheLastReading() {
            AfterRule rule = new AfterRule.Extrapolate(OptionalDouble.of(5000));

            Change change = DeltaA.of(baseline(), trace(5, 0.012, 0.0006), rule);

            assertThat(change.reading()).hasValue(80);
            assertThat(change.flags())
                    .containsExactlyInAnyOrder(TraceFlag.FINISHED_BY_HAND, TraceFlag.CREEP_NOT_MEASURED);
        }

        @Test
        void fallingSignalIsTheRisingOneUpsideDown() {
            Series rising = trace(6, 0.012, 0.0006);
            double[] y = rising.values().clone();
            for (int i = 0; i < y.length; i++) {
                y[i] = 0.2 - y[i];
            }
            Baseline upsideDown = before(BeforeRule.MEAN, 0.0997, 0.1005, 0.0996, 0.1001, 0.0998, 0.1003);

            Change up = DeltaA.of(baseline(), rising, EXTRAPOLATE);
            Change down = DeltaA.of(upsideDown, Series.of(rising.times(), y), EXTRAPOLATE);

            assertThat(down.deltaA()).isCloseTo(-up.deltaA(), within(1e-13));
            // The law of the burst, which helps here, is found by an iteration that stops when it gains little.
            assertThat(down.uDeltaA().getAsDouble()).isCloseTo(up.uDeltaA().getAsDouble(), within(1e-7));
        }

        @Test
        void flatTraceChangesByNothing() {
            double[] flat = new double[81];
            java.util.Arrays.fill(flat, 0.1);

            Change change = DeltaA.of(
                    before(BeforeRule.MEAN, 0.1, 0.1, 0.1),
                    Series.of(trace(1, 1, 0).times(), flat),
                    EXTRAPOLATE);

            assertThat(change.deltaA()).isCloseTo(0, within(1e-15));
            assertThat(change.creepPerMin().getAsDouble()).isCloseTo(0, within(1e-15));
            // No surer than the last of four decimals.
            assertThat(change.uDeltaA().getAsDouble()).isBetween(0.00002, 0.0001);
            assertThat(change.flags()).isEmpty();
        }

        @Test
        void lostReadingsAreSaid() {
            Change change =
                    DeltaA.of(baseline(), trace(7, 0.02, 0.0006).withOver(8).withMissing(9, 10), EXTRAPOLATE);

            assertThat(change.flags()).containsExactlyInAnyOrder(TraceFlag.OVER_RANGE, TraceFlag.READINGS_MISSING);
        }

        @Test
        void baselineOfTheNextStepIsTheLineAtItsTrigger() {
            Change change = DeltaA.of(baseline(), trace(8, 0.02, 0.0006), EXTRAPOLATE);

            Baseline.Given next = change.baselineOfNext(1230);

            assertThat(next.value())
                    .isCloseTo(
                            change.after() + 1230 / 60.0 * change.creepPerMin().getAsDouble(), within(1e-12));
            assertThat(next.standardUncertainty()).isBetween(1e-4, 5e-4);
        }

        @Test
        void seriesWithoutTimesHasNoLine() {
            assertThatThrownBy(() -> DeltaA.of(baseline(), Series.untimed(0.1, 0.2), EXTRAPOLATE))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("after must be a series with times but was 2 readings without");
        }

        /** Intercept and slope by the textbook's raw sums, as a spreadsheet has them. */
        private double[] textbookLine(Series series, FinishedPart part) {
            double n = 0;
            double st = 0;
            double sy = 0;
            double stt = 0;
            double sty = 0;
            for (int i = 0; i < series.size(); i++) {
                if (part.uses(i)) {
                    double t = series.timeS(i);
                    double y = series.absorbance(i);
                    n++;
                    st += t;
                    sy += y;
                    stt += t * t;
                    sty += t * y;
                }
            }
            double slope = (n * sty - st * sy) / (n * stt - st * st);
            return new double[] {(sy - slope * st) / n, slope};
        }
    }

    private static List<double[]> rows(String file) {
        try (InputStream in = DeltaATest.class.getResourceAsStream("/reference/" + file);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && Character.isDigit(line.charAt(0)))
                    .map(line -> java.util.Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
