package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tallywell.desk.DeskFixture.NOW;
import static tallywell.desk.DeskFixture.well;
import static tallywell.desk.DeskFixture.wells;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.chart.DrawnTrace;
import tallywell.notice.InputException;
import tallywell.plate.Well;

/** What is seen while something is dragged must be what the run comes to when it is let go. */
class LiveTracesTest {
    private static final Path KINETIC = Path.of("samples/cider-malic-kinetic/run.yaml");
    private static final List<Well> TWO = wells("D1", "D7");

    private RunDraft draft;
    private RunDesk desk;

    @BeforeEach
    void open() throws InputException {
        draft = new RunStore().open(KINETIC);
        desk = new RunDesk(draft, NOW, NOW);
    }

    private static List<DrawnTrace> looks(Worked worked) {
        return DrawnTrace.of(worked.analysis().orElseThrow(), 1, TWO);
    }

    @ParameterizedTest
    @ValueSource(doubles = {60, 300, 720, 1000})
    void aDraggedFinishedPartShowsWhatTheWholePlateComesTo(double timeS) {
        List<List<DrawnTrace>> seen = new ArrayList<>();
        desk.live().tryFinished(1, TWO, timeS, seen::add);
        List<DrawnTrace> whole = looks(Worked.of(draft.finishFrom(TWO, timeS, "as dragged", "")));
        assertThat(seen).hasSize(1);
        for (int i = 0; i < TWO.size(); i++) {
            DrawnTrace live = seen.get(0).get(i);
            assertThat(live.result().deltaA()).isEqualTo(whole.get(i).result().deltaA());
            assertThat(live.result().value()).isEqualTo(whole.get(i).result().value());
            assertThat(live.finishedFromMin()).isEqualTo(whole.get(i).finishedFromMin());
        }
        assertThat(desk.draft()).isEqualTo(draft);
    }

    @Test
    void aDraggedTriggerShowsWhatTheWholePlateComesToOnTheOldAxis() {
        List<List<DrawnTrace>> seen = new ArrayList<>();
        desk.live().tryTrigger(1, TWO, 255, seen::add);
        desk.triggerAt(1, 255);
        List<DrawnTrace> whole = looks(desk.worked());
        assertThat(desk.draft().readings().get(0).triggerAtS()).containsExactly(255.0);
        for (int i = 0; i < TWO.size(); i++) {
            DrawnTrace live = seen.get(0).get(i);
            assertThat(live.result().deltaA()).isEqualTo(whole.get(i).result().deltaA());
            // The trigger moved by half a minute; readings stay where they were on the axis.
            assertThat(live.triggerMin()).isEqualTo(0.5);
            assertThat(live.minutes().get(20)).isCloseTo(whole.get(i).minutes().get(20) + 0.5, within(1e-12));
        }
        desk.history().undo();
        assertThat(desk.draft()).isEqualTo(draft);
    }

    /** An edit whose results arrive between the drag and its turn must not mix into what was dragged at. */
    @Test
    void aDragIsWorkedUpFromTheRunThatWasShownWhenItWasMade() {
        DeskFixture.Later back = new DeskFixture.Later();
        RunDesk slow = new RunDesk(draft, back, NOW);
        back.goOn();
        List<Double> seen = new ArrayList<>();
        Runnable drag = () -> slow.live()
                .tryFinished(
                        1,
                        TWO,
                        600,
                        traces -> seen.add(traces.get(0).result().value().orElseThrow()));
        drag.run();
        back.goOn();
        slow.selection().only(wells("A5", "E1", "H4"));
        slow.exclude("bubble", "J. Vale");
        drag.run();
        back.goOn();
        drag.run();
        back.goOn();
        assertThat(seen).hasSize(3);
        assertThat(seen.get(1)).isEqualTo(seen.get(0));
        assertThat(seen.get(2)).isNotEqualTo(seen.get(0));
    }

    @Test
    void onlyTheLatestOfManyAttemptsIsSeen() {
        DeskFixture.Later back = new DeskFixture.Later();
        RunDesk slow = new RunDesk(draft, back, NOW);
        back.goOn();
        List<Double> seen = new ArrayList<>();
        for (double timeS : List.of(300.0, 400.0, 500.0)) {
            slow.live().tryFinished(1, TWO, timeS, looks -> seen.add(timeS));
        }
        back.goOn();
        assertThat(seen).containsExactly(500.0);
    }

    @Test
    void aTriggerCanOnlyBeMovedWhereItStandsInsideASingleSeries() throws InputException {
        TriggerSpan span = desk.trigger(1).orElseThrow();
        // The series is read every 15 s from 0 to 1395 s.
        assertThat(span).isEqualTo(new TriggerSpan(225, 0, 1395));
        assertThat(span.near(-100)).isEqualTo(1);
        assertThat(span.near(9999)).isEqualTo(1394);
        assertThat(span.near(230.4)).isEqualTo(230);
        RunDesk separate = new RunDesk(new RunStore().open(DeskFixture.CIDER.resolve("run.yaml")), NOW, NOW);
        assertThat(separate.trigger(1)).isEmpty();
    }

    @Test
    void aTriggerWhereThePlateCannotBeWorkedUpShowsNothing() {
        List<List<DrawnTrace>> seen = new ArrayList<>();
        desk.live().tryTrigger(1, TWO, 99_999, seen::add);
        assertThat(seen).containsExactly(List.of());
    }

    @Test
    void theFinishedPartCanBeDraggedAsLateAsTwoReadingsAllow() {
        // Read every 15 s up to 1170 s after the trigger.
        assertThat(desk.latestFinish(TWO)).hasValue(1155);
        desk.finishFrom(TWO, 1155, "slow", "J. Vale");
        assertThat(desk.worked().analysis()).isPresent();
        desk.finishFrom(TWO, 1156, "slow", "J. Vale");
        assertThat(desk.worked().analysis()).isEmpty();
    }

    @Test
    void theProgramFindsTheFinishedPartAgainWhenAsked() {
        desk.finishFrom(TWO, 720, "slow", "J. Vale");
        assertThat(desk.isFinishedByHand(List.of(well("D7")))).isTrue();
        desk.finishByRule(TWO);
        assertThat(desk.isFinishedByHand(TWO)).isFalse();
        assertThat(looks(desk.worked()).get(0).result().deltaA())
                .isEqualTo(looks(Worked.of(draft)).get(0).result().deltaA());
    }
}
