package tallywell.gui;

import java.awt.BorderLayout;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import org.jfree.chart.JFreeChart;
import tallywell.chart.CalibrationPlot;
import tallywell.desk.CalibrationFormula;
import tallywell.desk.Shown;
import tallywell.plate.Well;
import tallywell.workup.StepAnalysis;

/** The calibration of a step, with the selected wells standing out. */
final class CalibrationPanel extends JPanel {
    private final Shown shown;
    private Optional<StepAnalysis> step = Optional.empty();
    private Collection<Well> selected = List.of();

    CalibrationPanel(Shown shown) {
        super(new BorderLayout());
        this.shown = shown;
        setOpaque(false);
    }

    /** Shows the calibration of a step that has one. */
    void show(Optional<StepAnalysis> other, Collection<Well> selection) {
        step = other;
        selected = List.copyOf(selection);
        redraw();
    }

    private void redraw() {
        removeAll();
        step.ifPresent(each -> add(view(each), BorderLayout.CENTER));
        revalidate();
        repaint();
    }

    @Override
    public void updateUI() {
        super.updateUI();
        // The constructor of the superclass calls this before the fields are set.
        if (step != null && step.isPresent()) {
            redraw();
        }
    }

    private ChartView view(StepAnalysis each) {
        JFreeChart chart = CalibrationPlot.of(each, each.step().analyte().name(), selected, ChartView.style(shown));
        ChartView view = new ChartView(chart, this::redraw);
        view.getAccessibleContext()
                .setAccessibleName(CalibrationFormula.of(each.calibration().orElseThrow(), shown));
        return view;
    }
}
