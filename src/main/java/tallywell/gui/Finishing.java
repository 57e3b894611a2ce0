package tallywell.gui;

import java.util.List;
import java.util.Optional;
import java.util.function.IntSupplier;
import tallywell.chart.DrawnTrace;
import tallywell.desk.RunDesk;
import tallywell.desk.TriggerSpan;
import tallywell.plate.Well;

/** What happens while the finished part or the trigger is dragged, and when it is let go. */
final class Finishing implements TracePanel.Drag {
    private static final double MINUTE = 60;

    private final RunDesk desk;
    private final Host host;
    private final Said said;
    private final SideCard side;
    private final IntSupplier step;

    Finishing(RunDesk desk, Host host, Said said, SideCard side, IntSupplier step) {
        this.desk = desk;
        this.host = host;
        this.said = said;
        this.side = side;
        this.step = step;
    }

    @Override
    public void dragging(TracePanel.Handle handle, double min) {
        List<Well> wells = side.wells();
        if (handle == TracePanel.Handle.FINISHED) {
            double timeS = finished(min);
            desk.live()
                    .tryFinished(
                            step.getAsInt(),
                            wells,
                            timeS,
                            looks -> seen(
                                    looks,
                                    Text.of("trace.dragging", host.shown().fixed(timeS / MINUTE, 1))));
        } else {
            trigger(min)
                    .ifPresent(timeS -> desk.live()
                            .tryTrigger(
                                    step.getAsInt(),
                                    wells,
                                    timeS,
                                    looks -> seen(
                                            looks,
                                            Text.of(
                                                    "trace.dragging.trigger",
                                                    host.shown().plain(timeS)))));
        }
    }

    private void seen(List<DrawnTrace> looks, String what) {
        if (looks.isEmpty() || !side.trace().isDragging()) {
            return;
        }
        side.trace().preview(looks);
        side.say(SideCard.results(looks, host.shown()) + "\n" + what);
    }

    @Override
    public void dropped(TracePanel.Handle handle, double min) {
        if (handle == TracePanel.Handle.FINISHED) {
            finish(side.wells(), finished(min));
        } else {
            trigger(min).ifPresentOrElse(this::moveTrigger, side::refresh);
        }
    }

    @Override
    public void cancelled() {
        side.refresh();
    }

    /** The nearest whole second at which every well shown still has two readings. */
    private double finished(double min) {
        double end = side.trace().traces().get(0).endMin();
        double latestS = desk.latestFinish(side.wells()).orElse(end * MINUTE);
        return Math.max(0, Math.min(Math.floor(latestS), Math.rint(min * MINUTE)));
    }

    private Optional<Double> trigger(double min) {
        return desk.trigger(step.getAsInt()).map(span -> span.near(span.atS() + min * MINUTE));
    }

    private void finish(List<Well> wells, double timeS) {
        desk.preview(desk.draft().finishFrom(wells, timeS, "preview", ""));
        Optional<Reason> reason = Reason.ask(
                side,
                Text.of("finish.title"),
                Text.of(
                        "finish.about",
                        host.shown().fixed(timeS / MINUTE, 1),
                        desk.selection().words()),
                host.settings(),
                Text.of("finish.usual").split("\\|"));
        if (reason.isPresent()) {
            desk.finishFrom(wells, timeS, reason.get().why(), reason.get().who());
        } else {
            desk.preview(desk.draft());
        }
    }

    private void moveTrigger(double timeS) {
        double was = desk.trigger(step.getAsInt()).map(TriggerSpan::atS).orElse(timeS);
        desk.triggerAt(step.getAsInt(), timeS);
        side.refresh();
        if (was != timeS) {
            said.offer(
                    Text.of(
                            "trigger.moved",
                            host.shown().plain(was),
                            host.shown().plain(timeS)),
                    Text.of("trigger.back"),
                    () -> desk.triggerAt(step.getAsInt(), was));
        }
    }
}
