package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tallywell.files.MethodLibrary;
import tallywell.method.AssayMethod;
import tallywell.notice.InputException;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Taken;

/** When a step was read last, by hand. */
class LastReadingsTest {
    private static final PlateFormat PLATE = new PlateFormat(8, 12);
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    private static AssayMethod method(String id) throws InputException {
        return new MethodLibrary().find(id).orElseThrow();
    }

    private static ReadingSeries endPoint() {
        return ReadingSeries.endPoint(PLATE).add(new Well(0, 0), 0.5).build();
    }

    private static ReadingSeries series(double... times) {
        return ReadingSeries.timed(PLATE)
                .add(new Well(0, 0), times, new double[times.length], null)
                .build();
    }

    private static Taken before(ReadingSeries series) {
        return new Taken("before.csv", false, List.of(), UNKNOWN, series);
    }

    private static Taken after(OptionalDouble timeS, ReadingSeries series) {
        return new Taken("after.csv", true, List.of(), timeS, series);
    }

    @Test
    void endPointsWithoutTimesTellNothing() throws InputException {
        assertThat(LastReadings.of(List.of(before(endPoint()), after(UNKNOWN, endPoint())), method("l-malic-340")))
                .containsExactly(UNKNOWN);
    }

    @Test
    void timeOfTheRunCountsFromTheTrigger() throws InputException {
        Taken later = new Taken("later.csv", false, List.of(), OptionalDouble.of(900), endPoint());
        assertThat(LastReadings.of(
                        List.of(before(endPoint()), after(OptionalDouble.of(600), endPoint()), later),
                        method("l-malic-340")))
                .containsExactly(OptionalDouble.of(900));
    }

    /** The method says 30 s from the trigger to the first reading; the file goes on for 540 s. */
    @Test
    void seriesAfterTheTriggerBeginsWhenTheMethodSays() throws InputException {
        assertThat(LastReadings.of(
                        List.of(before(series(0, 60)), after(UNKNOWN, series(100, 400, 640))), method("l-malic-340")))
                .containsExactly(OptionalDouble.of(570));
    }

    @Test
    void triggerInsideASeriesIsReadUntilTheNextOrTheEnd() throws InputException {
        Taken whole = new Taken("trace.csv", false, List.of(225.0, 900.0), UNKNOWN, series(0, 225, 900, 2000));
        assertThat(LastReadings.of(List.of(whole), method("d-glucose-d-fructose-340")))
                .containsExactly(OptionalDouble.of(675), OptionalDouble.of(1100));
    }

    /** The second of its two triggers is the one that a coupled step is read after. */
    @Test
    void coupledStepCountsFromItsSecondTrigger() throws InputException {
        assertThat(LastReadings.of(
                        List.of(
                                before(endPoint()),
                                after(OptionalDouble.of(180), endPoint()),
                                after(OptionalDouble.of(840), endPoint())),
                        method("acetic-coupled-340")))
                .containsExactly(OptionalDouble.of(840));
    }
}
