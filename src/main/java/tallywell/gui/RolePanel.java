package tallywell.gui;

import java.awt.Component;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.RoleFaces;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.desk.WellFace;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.PerAnalyte;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** The left side of the layout editor: what wells can hold, and the details of the one that is chosen. */
final class RolePanel extends Card {
    private static final int MOST_SLOTS = 1536;

    private final LayoutDesk desk;
    private final Shown shown;
    private final Typed typed;
    private final Said said;
    private final Map<WellFace.Shape, Choice> choices = new EnumMap<>(WellFace.Shape.class);
    private final JPanel details = new JPanel(new MigLayout("insets 0, fillx, hidemode 3", "[grow, fill]", ""));
    private final Map<WellFace.Shape, JPanel> fields = new EnumMap<>(WellFace.Shape.class);
    private final Map<WellFace.Shape, Details> panels = new LinkedHashMap<>();
    private final FillingFields samples;
    private final FillingFields standards;
    private final JButton apply = Fields.primary("", this::apply);
    private Runnable askSeries = () -> {};
    private WellFace.Shape chosen = WellFace.Shape.SAMPLE;

    /** What one role asks for, and what it does to the selected wells. */
    private interface Details {
        void apply() throws InputException;
    }

    RolePanel(LayoutDesk desk, Shown shown, Settings settings, Said said) {
        super(new MigLayout("insets 12 12 12 12, fillx, gapy 2", "[grow]", ""));
        this.desk = desk;
        this.shown = shown;
        typed = new Typed(shown);
        this.said = said;
        samples = FillingFields.of(settings.replicates(), settings::replicates);
        standards = samples.ofAnotherRole();
        add(Labels.softStrong(Text.of("layout.holds")), "gapleft 4, wrap 4");
        ButtonGroup group = new ButtonGroup();
        for (WellFace.Shape shape : List.of(
                WellFace.Shape.SAMPLE,
                WellFace.Shape.BLANK,
                WellFace.Shape.STANDARD,
                WellFace.Shape.CONTROL,
                WellFace.Shape.SAMPLE_BLANK,
                WellFace.Shape.SPIKE,
                WellFace.Shape.UNUSED)) {
            Choice choice = new Choice(Text.of("role." + shape), new RoleGlyph(shape, 26), false);
            choice.setName("role-" + shape);
            choice.addActionListener(event -> choose(shape));
            group.add(choice);
            choices.put(shape, choice);
            add(choice, "growx, wmin 120, h pref!, wrap");
        }
        details.setOpaque(false);
        panels();
        add(details, "growx, gaptop 8, wrap");
        apply.setName("apply");
        add(apply, "growx, gaptop 4, wrap");
        desk.history().onChange(this::refresh);
        desk.selection().onChange(this::refresh);
        choose(WellFace.Shape.SAMPLE);
    }

    private void panels() {
        panel(WellFace.Shape.SAMPLE, this::sample);
        panel(WellFace.Shape.BLANK, this::blank);
        panel(WellFace.Shape.STANDARD, this::standard);
        panel(WellFace.Shape.CONTROL, this::control);
        panel(WellFace.Shape.SAMPLE_BLANK, this::sampleBlank);
        panel(WellFace.Shape.SPIKE, this::spike);
        panel(WellFace.Shape.UNUSED, panel -> () -> desk.paint(new Content.Unused(), Text.of("edit.clear")));
    }

    /** Builds the fields of a role into a panel. */
    private interface Building {
        Details into(JPanel panel);
    }

    private void panel(WellFace.Shape shape, Building building) {
        JPanel panel = new JPanel(new MigLayout("insets 0 4 0 0, fillx, gapy 4, hidemode 3", "[][grow, fill]", ""));
        panel.setOpaque(false);
        panels.put(shape, building.into(panel));
        panel.setVisible(false);
        for (Component each : panel.getComponents()) {
            if (each instanceof JTextField field) {
                field.addActionListener(event -> apply());
            }
        }
        fields.put(shape, panel);
        details.add(panel, "growx, wrap");
    }

    private Details sample(JPanel panel) {
        JSpinner first = Fields.number(panel, Text.of("layout.first"), 1, 1, MOST_SLOTS);
        samples.into(panel, () -> {});
        desk.history().onChange(() -> {
            if (!desk.layout().slots().contains(Fields.value(first))) {
                return;
            }
            first.setValue(Math.min(MOST_SLOTS, LayoutEdits.nextSlot(desk.layout())));
        });
        return () -> desk.edit(
                layout -> LayoutEdits.fillSamples(
                        layout, desk.selection().wells(), Fields.value(first), samples.filling()),
                Text.of("edit.samples"));
    }

    private Details blank(JPanel panel) {
        JCheckBox without = new JCheckBox(Text.of("layout.without"));
        without.setOpaque(false);
        panel.add(without, "span 2, wrap");
        Supplier<String> group = group(panel);
        return () -> desk.paint(new Content.Blank("", group.get(), !without.isSelected()), Text.of("edit.blanks"));
    }

    /** The group of blanks that a role belongs to; empty for the common one. */
    private static Supplier<String> group(JPanel panel) {
        JTextField group = Fields.text(panel, Text.of("layout.group"), "");
        group.setName("group");
        group.putClientProperty("JTextField.placeholderText", Text.of("layout.group.none"));
        return () -> group.getText().strip();
    }

    private Details standard(JPanel panel) {
        JTextField levels = Fields.text(panel, Text.of("layout.levels"), shown.plain(0.1) + " g/L");
        levels.setName("levels");
        levels.setToolTipText(Text.of("layout.levels.tip"));
        JButton make = Fields.button(Text.of("layout.series"), this::series);
        make.setName("series");
        panel.add(make, "skip 1, wrap");
        standards.into(panel, () -> {});
        Supplier<String> group = group(panel);
        askSeries = () -> {
            SeriesDialog dialog =
                    new SeriesDialog(desk.layout(), desk.selection().wells(), group.get(), standards, shown);
            SeriesDialog.ask(this, dialog).ifPresent(line -> {
                levels.setText(line);
                levels.setCaretPosition(0);
                if (!desk.selection().wells().isEmpty()) {
                    apply();
                }
            });
        };
        return () -> {
            List<Quantity> read = LayoutEdits.levels(typed.pointed(levels.getText()));
            if (read.size() == 1 && !standards.filling().keep()) {
                desk.paint(
                        new Content.Standard("", group.get(), PerAnalyte.single(read.get(0))),
                        Text.of("edit.standards"));
                return;
            }
            desk.edit(
                    layout -> LayoutEdits.fillStandards(
                            layout, desk.selection().wells(), read, group.get(), standards.filling()),
                    Text.of("edit.standards"));
        };
    }

    /** Asks for a series of standards and puts it into the selected wells. */
    void series() {
        choose(WellFace.Shape.STANDARD);
        askSeries.run();
    }

    private Details control(JPanel panel) {
        JTextField name = Fields.text(panel, Text.of("layout.name"), Text.of("layout.control.name"));
        JTextField assigned = Fields.text(panel, Text.of("layout.assigned"), "");
        JTextField tolerance = Fields.text(panel, Text.of("layout.tolerance"), "10 %");
        JTextField dilution = Fields.text(panel, Text.of("layout.dilution"), "1");
        Supplier<String> group = group(panel);
        return () -> {
            PerAnalyte value = assigned.getText().isBlank()
                    ? PerAnalyte.none()
                    : PerAnalyte.single(typed.quantity(
                            assigned.getText(), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT));
            Optional<Quantity> allowed = tolerance.getText().isBlank() || value.isEmpty()
                    ? Optional.empty()
                    : Optional.of(typed.quantity(tolerance.getText(), Kind.RATIO, Kind.CONCENTRATION, Kind.CONTENT));
            desk.paint(
                    new Content.Control(
                            "",
                            group.get(),
                            name.getText().strip(),
                            value,
                            allowed,
                            typed.dilution(dilution.getText())),
                    Text.of("edit.controls"));
        };
    }

    private Details sampleBlank(JPanel panel) {
        JSpinner of = Fields.number(panel, Text.of("layout.of"), 1, 1, MOST_SLOTS);
        Supplier<String> group = group(panel);
        return () ->
                desk.paint(new Content.SampleBlank("", group.get(), Fields.value(of)), Text.of("edit.sample-blanks"));
    }

    private Details spike(JPanel panel) {
        JSpinner of = Fields.number(panel, Text.of("layout.of"), 1, 1, MOST_SLOTS);
        JTextField added = Fields.text(panel, Text.of("layout.added"), shown.plain(0.1) + " g/L");
        JTextField fraction = Fields.text(panel, Text.of("layout.fraction"), "0 %");
        Supplier<String> group = group(panel);
        return () -> {
            double part = typed.quantity(fraction.getText(), Kind.RATIO).base();
            if (!(part >= 0 && part < 1)) {
                throw new InputException(
                        Place.nowhere(), "found '" + fraction.getText() + "'; expected a part from 0 % to below 100 %");
            }
            PerAnalyte rise = PerAnalyte.single(
                    typed.quantity(added.getText(), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT));
            desk.paint(new Content.Spike("", group.get(), Fields.value(of), rise, part), Text.of("edit.spikes"));
        };
    }

    void choose(WellFace.Shape shape) {
        chosen = shape;
        Choice choice = choices.get(shape);
        if (choice != null) {
            choice.setSelected(true);
        }
        fields.forEach((each, panel) -> panel.setVisible(each == shape));
        details.revalidate();
        refresh();
    }

    /** Puts the focus on the first detail of the chosen role, or on the button where it has none. */
    void focusDetails() {
        JComponent target = apply;
        JPanel panel = fields.get(chosen);
        for (Component each : panel == null ? new Component[0] : panel.getComponents()) {
            if (each instanceof JSpinner spinner) {
                target = ((JSpinner.DefaultEditor) spinner.getEditor()).getTextField();
            } else if (each.isFocusable() && !(each instanceof JLabel) && each instanceof JComponent field) {
                target = field;
            } else {
                continue;
            }
            break;
        }
        target.requestFocusInWindow();
    }

    /** Puts what is chosen into the selected wells. */
    void apply() {
        Details panel = panels.get(chosen);
        if (panel == null || desk.selection().wells().isEmpty()) {
            said.hint(Text.of("layout.select"));
            return;
        }
        try {
            panel.apply();
            said.clear();
        } catch (InputException e) {
            said.problem(e.notices());
        }
    }

    private void refresh() {
        Map<WellFace.Shape, Integer> counts = new EnumMap<>(WellFace.Shape.class);
        desk.layout()
                .wells()
                .forEach(
                        (well, content) -> counts.merge(RoleFaces.shape(content).ofRole(), 1, Integer::sum));
        choices.forEach((shape, choice) -> {
            int wells = counts.getOrDefault(shape, 0);
            String more = shape == WellFace.Shape.SAMPLE
                    ? " · " + Text.of("layout.slots", desk.layout().slots().size())
                    : "";
            choice.detail(wells == 0 ? Text.of("layout.none") : Text.of("layout.wells", wells) + more);
        });
        int selected = desk.selection().wells().size();
        apply.setEnabled(selected > 0);
        apply.setText(selected == 0 ? Text.of("layout.select.short") : Text.of("layout.apply." + chosen, selected));
    }
}
