package tallywell.gui;

import java.awt.Dimension;
import java.util.List;
import java.util.Optional;
import javax.swing.ButtonGroup;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Faces;
import tallywell.desk.PlateShow;
import tallywell.desk.RunDesk;
import tallywell.desk.Shown;
import tallywell.desk.ValueFaces;
import tallywell.desk.Worked;

/** The plate of a run with the words that choose what its wells show. */
final class PlateCard extends Card {
    private static final double WIDE_TEXT = 26;
    private static final double HIGH_TEXT = 23;

    private final RunDesk desk;
    private final Shown shown;
    private final Runnable stepChanged;
    private final PlateView plate;
    private final Legend legend;
    private final JComboBox<String> steps = new JComboBox<>();
    private PlateShow show = PlateShow.CONCENTRATION;

    /** A plate of a run; told when another step is looked at. */
    PlateCard(RunDesk desk, Shown shown, Runnable stepChanged) {
        super(new MigLayout("insets 8 12 8 12, fill, gapy 4, hidemode 3", "[grow, fill]", "[][grow, fill][]"));
        this.desk = desk;
        this.shown = shown;
        this.stepChanged = stepChanged;
        Faces faces = faces();
        plate = new PlateView(desk.selection(), faces);
        legend = new Legend(faces);
        add(choices(), "growx, wmin 100, wrap");
        add(plate, "grow, wrap");
        add(legend, "growx");
    }

    private JPanel choices() {
        JPanel row = new WrapRow(2);
        row.add(Labels.soft(Text.of("show") + "  "));
        ButtonGroup group = new ButtonGroup();
        for (PlateShow each : PlateShow.values()) {
            Choice choice = new Choice(Text.of("show." + each), null, true);
            choice.setName("show-" + each);
            choice.setSelected(each == show);
            choice.addActionListener(event -> show(each));
            group.add(choice);
            row.add(choice);
        }
        steps.getAccessibleContext().setAccessibleName(Text.of("run.step"));
        steps.addActionListener(event -> stepChanged.run());
        row.add(steps);
        return row;
    }

    /** The step that is looked at, from 1. */
    int step() {
        return Math.max(1, steps.getSelectedIndex() + 1);
    }

    void show(PlateShow other) {
        show = other;
        refresh();
    }

    private Faces faces() {
        Worked worked = desk.worked();
        Worked fitting = worked.draft().layout().equals(desk.draft().layout())
                ? worked
                : new Worked(desk.draft(), Optional.empty(), Optional.empty(), List.of());
        PlateShow possible = fitting.analysis().isPresent() || show == PlateShow.ROLE ? show : PlateShow.ROLE;
        return ValueFaces.of(possible, fitting, step(), shown);
    }

    /** The steps of the method; the choice between them is seen only where there are several. */
    void refreshSteps() {
        List<String> names = desk.worked()
                .analysis()
                .map(analysis -> analysis.steps().stream()
                        .map(each -> each.step().analyte().name())
                        .toList())
                .orElse(List.of());
        steps.setVisible(names.size() > 1);
        if (steps.getItemCount() != names.size()) {
            steps.removeAllItems();
            names.forEach(steps::addItem);
        }
    }

    void refresh() {
        Faces faces = faces();
        plate.show(faces);
        String key = "legend.none." + show;
        legend.show(faces, Text.of(Text.has(key) ? key : "legend.none"));
    }

    PlateView plate() {
        return plate;
    }

    @Override
    public Dimension getMinimumSize() {
        return inText(WIDE_TEXT, HIGH_TEXT);
    }
}
