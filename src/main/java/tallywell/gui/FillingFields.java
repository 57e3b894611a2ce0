package tallywell.gui;

import java.util.List;
import java.util.function.Consumer;
import javax.swing.DefaultComboBoxModel;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.JToggleButton;
import javax.swing.SpinnerNumberModel;
import tallywell.desk.Filling;
import tallywell.desk.Replicates;

/** How wells are filled in turn. What is chosen once holds for every role; only the wells of each are its own. */
final class FillingFields {
    private static final int MOST_EACH = 48;
    private static final List<Replicates> PLACES = List.of(Replicates.BELOW, Replicates.BESIDE, Replicates.MIRRORED);

    private final DefaultComboBoxModel<String> order;
    private final DefaultComboBoxModel<String> place;
    private final JToggleButton.ToggleButtonModel keep;
    private final SpinnerNumberModel each = new SpinnerNumberModel(2, 1, MOST_EACH, 1);
    private final Consumer<Replicates> remember;

    private FillingFields(
            DefaultComboBoxModel<String> order,
            DefaultComboBoxModel<String> place,
            JToggleButton.ToggleButtonModel keep,
            Consumer<Replicates> remember) {
        this.order = order;
        this.place = place;
        this.keep = keep;
        this.remember = remember;
    }

    /**
     * The fields with how replicates were placed the last time.
     *
     * @param remember is told of another place
     */
    static FillingFields of(Replicates last, Consumer<Replicates> remember) {
        DefaultComboBoxModel<String> order = words("layout.columns", "layout.rows");
        DefaultComboBoxModel<String> place = words("layout.below", "layout.beside", "layout.mirrored");
        place.setSelectedItem(place.getElementAt(PLACES.indexOf(last)));
        JToggleButton.ToggleButtonModel keep = new JToggleButton.ToggleButtonModel();
        keep.setSelected(true);
        return new FillingFields(order, place, keep, remember);
    }

    /** The same choices with another number of wells for each. */
    FillingFields ofAnotherRole() {
        return new FillingFields(order, place, keep, remember);
    }

    private static DefaultComboBoxModel<String> words(String... keys) {
        DefaultComboBoxModel<String> model = new DefaultComboBoxModel<>();
        for (String key : keys) {
            model.addElement(Text.of(key));
        }
        return model;
    }

    /** Shows the choices in a panel, which is told of every change made there. */
    void into(JPanel panel, Runnable changed) {
        JComboBox<String> orders = new JComboBox<>(order);
        orders.addActionListener(event -> changed.run());
        Fields.add(panel, Text.of("layout.order"), orders);
        JSpinner count = new JSpinner(each);
        count.addChangeListener(event -> changed.run());
        Fields.add(panel, Text.of("layout.each"), count);
        JComboBox<String> places = new JComboBox<>(place);
        places.setName("replicates");
        places.addActionListener(event -> {
            remember.accept(place());
            changed.run();
        });
        Fields.add(panel, Text.of("layout.place"), places);
        JCheckBox keeping = new JCheckBox(Text.of("layout.keep"));
        keeping.setModel(keep);
        keeping.setOpaque(false);
        keeping.addActionListener(event -> changed.run());
        panel.add(keeping, "span 2, wrap");
    }

    private Replicates place() {
        return PLACES.get(Math.max(0, place.getIndexOf(place.getSelectedItem())));
    }

    /** What is chosen. */
    Filling filling() {
        int count = each.getNumber().intValue();
        return new Filling(
                order.getIndexOf(order.getSelectedItem()) == 0 ? Filling.Order.COLUMNS : Filling.Order.ROWS,
                place() == Replicates.MIRRORED ? Math.min(2, count) : count,
                place(),
                keep.isSelected());
    }
}
