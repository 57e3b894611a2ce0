package tallywell.gui;

import java.awt.CardLayout;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntSupplier;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import tallywell.chart.DrawnTrace;
import tallywell.chart.StepTraces;
import tallywell.desk.CalibrationFormula;
import tallywell.desk.RunDesk;
import tallywell.desk.Shown;
import tallywell.method.CalibrationRule;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;
import tallywell.workup.WellTrace;

/** What lies behind the selected wells: their traces, or the calibration. */
final class SideCard extends Card {
    private static final int MOST_TRACES = 24;
    private static final int MOST_WORDS = 3;

    private static final double MILLI = 1000;
    private static final double WIDE_TEXT = 22;
    private static final double HIGH_TEXT = 20;

    private final RunDesk desk;
    private final Host host;
    private final IntSupplier step;
    private final TracePanel trace;
    private final CalibrationPanel calibration;
    private final Finishing finishing;
    private final CardLayout cards = new CardLayout();
    private final JPanel side = new JPanel(cards);
    private final JLabel title = Labels.soft("");
    private final JTextArea words = Labels.wrapped("", false);
    private final JButton byRule;

    SideCard(RunDesk desk, Host host, Said said, IntSupplier step) {
        super(new MigLayout("insets 8 12 8 12, fill, gapy 4, hidemode 3", "[grow, fill][]", "[][grow, fill][]"));
        this.desk = desk;
        this.host = host;
        this.step = step;
        finishing = new Finishing(desk, host, said, this, step);
        trace = new TracePanel(host.shown(), finishing);
        calibration = new CalibrationPanel(host.shown());
        byRule = Fields.button(Text.of("finish.rule"), () -> desk.finishByRule(wells()));
        byRule.setName("finish-by-rule");
        words.setName("side-words");
        add(choices(), "span 2, wrap");
        side.setOpaque(false);
        side.add(trace, "trace");
        side.add(calibration, "calibration");
        add(side, "span 2, grow, wrap, hmin 120");
        add(words, "growx, wmin 100");
        add(byRule, "top");
    }

    private JPanel choices() {
        JPanel row = new JPanel(new MigLayout("insets 0, gapx 2", "", ""));
        row.setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        for (String each : List.of("trace", "calibration")) {
            Choice choice = new Choice(Text.of(each + ".title"), null, true);
            choice.setSelected(each.equals("trace"));
            choice.addActionListener(event -> {
                cards.show(side, each);
                refresh();
            });
            choice.setName("side-" + each);
            group.add(choice);
            row.add(choice);
        }
        row.add(title, "gapleft 8, wmax 220");
        return row;
    }

    void refresh() {
        if (trace.isDragging()) {
            return;
        }
        Optional<Analysis> analysis = desk.worked().analysis();
        List<DrawnTrace> looks = analysis.map(each ->
                        DrawnTrace.of(each, step.getAsInt(), desk.selection().wells()))
                .orElse(List.of());
        Optional<StepAnalysis> worked = analysis.map(each -> each.steps().get(step.getAsInt() - 1));
        trace.show(
                looks.size() > MOST_TRACES ? looks.subList(0, MOST_TRACES) : looks,
                StepTraces.absorbance(
                        worked.map(each -> each.step().signal().wavelengthNm()).orElse(OptionalDouble.empty())),
                desk.trigger(step.getAsInt()).isPresent());
        Optional<StepAnalysis> curved = worked.filter(each -> each.calibration().isPresent());
        calibration.show(curved, desk.selection().wells());
        title.setText(desk.selection().words());
        boolean curve = calibration.isVisible();
        byRule.setVisible(!curve && desk.isFinishedByHand(wells()));
        say(
                curve
                        ? curved.flatMap(StepAnalysis::calibration)
                                .map(each -> CalibrationFormula.of(each, host.shown()))
                                .orElseGet(this::noCurve)
                        : words(looks));
    }

    /** Why there is no curve: the method needs none, or there is nothing to calculate it from yet. */
    private String noCurve() {
        boolean needless = desk.draft()
                .method()
                .map(each -> each.value().steps())
                .filter(steps -> step.getAsInt() <= steps.size())
                .map(steps -> steps.get(step.getAsInt() - 1).calibration() instanceof CalibrationRule.ByAbsorptivity)
                .orElse(false);
        return Text.of(needless ? "calibration.none" : "calibration.later");
    }

    private String words(List<DrawnTrace> looks) {
        if (looks.isEmpty()) {
            return Text.of(desk.worked().analysis().isPresent() ? "trace.select" : "trace.nothing");
        }
        boolean timed = looks.get(0).finishedFromMin().isPresent();
        boolean movable = desk.trigger(step.getAsInt()).isPresent();
        String how = timed ? "\n" + Text.of(movable ? "trace.drag.both" : "trace.drag") : "";
        return results(looks, host.shown()) + how;
    }

    /** What some traces come to, in one line. */
    static String results(List<DrawnTrace> looks, Shown shown) {
        List<String> all = new ArrayList<>();
        for (DrawnTrace each : looks.subList(0, Math.min(MOST_WORDS, looks.size()))) {
            WellResult look = each.result();
            WellTrace trace = look.trace();
            StringBuilder text = new StringBuilder(look.well() + ": ΔA " + shown.fixed(look.deltaA(), 4));
            if (trace.creepPerMin().isPresent()) {
                text.append(", ")
                        .append(Text.of(
                                "trace.creep",
                                shown.fixed(MILLI * trace.creepPerMin().getAsDouble(), 2)));
                if (trace.uCreepPerMin().isPresent()) {
                    text.append(" ± ")
                            .append(shown.fixed(MILLI * trace.uCreepPerMin().getAsDouble(), 2));
                }
            }
            if (look.value().isPresent()) {
                text.append(", ")
                        .append(shown.rounded(look.value().getAsDouble(), 4))
                        .append(' ')
                        .append(look.unit().symbol());
            }
            all.add(text.toString());
        }
        return String.join(" · ", all) + (looks.size() > MOST_WORDS ? " …" : "");
    }

    void say(String text) {
        words.setText(text);
    }

    /** The wells whose traces are seen. */
    List<Well> wells() {
        return trace.traces().stream().map(DrawnTrace::well).toList();
    }

    TracePanel trace() {
        return trace;
    }

    @Override
    public Dimension getMinimumSize() {
        return inText(WIDE_TEXT, HIGH_TEXT);
    }
}
