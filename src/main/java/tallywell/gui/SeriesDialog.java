package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.LayoutEdits;
import tallywell.desk.RoleFaces;
import tallywell.desk.Selection;
import tallywell.desk.SeriesLook;
import tallywell.desk.Shown;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Asks for a dilution series of standards and shows which well would get what. */
final class SeriesDialog extends JPanel {
    private static final double[] FACTORS = {1, 2, 10, 3};
    private static final int USUAL_COUNT = 6;
    private static final int MOST = 96;

    private final Layout layout;
    private final Set<Well> wells;
    private final String group;
    private final FillingFields filling;
    private final Shown shown;
    private final RoleFaces faces;
    private final JTextField highest;
    private final JSpinner count;
    private final JComboBox<String> steps;
    private final PlateView plate;
    private final JTextArea words = Labels.wrapped("", false);
    private boolean counted;
    private boolean proposing;

    SeriesDialog(Layout layout, Collection<Well> wells, String group, FillingFields filling, Shown shown) {
        super(new MigLayout("insets 4, fill", "[][grow, fill]", "[grow, fill][]"));
        this.layout = layout;
        this.wells = Set.copyOf(wells);
        this.group = group;
        this.filling = filling;
        this.shown = shown;
        faces = new RoleFaces(shown, Optional.empty());
        JPanel fields = new JPanel(new MigLayout("insets 0, gapy 8", "[][grow, fill]", ""));
        highest = Fields.text(fields, Text.of("series.highest"), shown.plain(0.4) + " g/L");
        steps = Fields.choice(fields, Text.of("series.steps"), new String[] {
            Text.of("series.even"), Text.of("series.half"), Text.of("series.tenth"), Text.of("series.third")
        });
        count = Fields.number(fields, Text.of("series.count"), proposal(), 1, MOST);
        count.setName("series-count");
        filling.into(fields, this::refilled);
        add(fields, "top");
        Selection marked = new Selection(layout.format());
        marked.only(wells);
        plate = new PlateView(marked, faces.of(layout));
        plate.setFocusable(false);
        plate.setPreferredSize(new Dimension(470, 310));
        add(plate, "grow, wmin 280, hmin 200, wrap");
        words.setName("series-words");
        words.setRows(3);
        add(words, "span 2, growx, wmin 300");
        listen();
        refresh();
    }

    /** As many levels as the selected wells have room for. */
    private int proposal() {
        int room = filling.filling().room(layout, wells);
        return room == 0 ? USUAL_COUNT : Math.min(MOST, room);
    }

    private void listen() {
        highest.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent event) {
                refresh();
            }

            @Override
            public void removeUpdate(DocumentEvent event) {
                refresh();
            }

            @Override
            public void changedUpdate(DocumentEvent event) {
                refresh();
            }
        });
        steps.addActionListener(event -> refresh());
        count.addChangeListener(event -> {
            counted |= !proposing;
            refresh();
        });
    }

    /** Another way to fill has room for other levels; a number that was typed stays. */
    private void refilled() {
        if (!counted) {
            proposing = true;
            count.setValue(proposal());
            proposing = false;
        }
        refresh();
    }

    private List<Quantity> levels() {
        Quantity top = Quantity.parse(
                shown.pointed(highest.getText()), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
        return LayoutEdits.series(top, Fields.value(count), FACTORS[steps.getSelectedIndex()]);
    }

    private void refresh() {
        try {
            List<Quantity> levels = levels();
            SeriesLook look = SeriesLook.of(layout, wells, levels, group, filling.filling(), shown);
            plate.show(faces.of(look.layout()));
            words.setText(wells.isEmpty() ? Text.of("series.nowells", line(levels)) : words(look));
        } catch (IllegalArgumentException e) {
            plate.show(faces.of(layout));
            words.setText(String.valueOf(e.getMessage()));
        }
    }

    private static String words(SeriesLook look) {
        String all = String.join(" · ", look.lines());
        String homeless = look.homeless() > 0 ? "\n" + Text.of("series.homeless", look.homeless()) : "";
        return all + homeless + (look.free() > 0 ? "\n" + Text.of("series.free", look.free()) : "");
    }

    private String line(List<Quantity> levels) {
        return levels.stream().map(level -> shown.plain(level.value())).collect(Collectors.joining("  ")) + " "
                + levels.get(0).unit();
    }

    /** The levels in one line. */
    String line() {
        return line(levels());
    }

    /** The levels in one line, or nothing if given up. */
    static Optional<String> ask(Component owner, SeriesDialog panel) {
        while (Asking.ask(owner, Text.of("series.title"), panel, panel.highest)) {
            try {
                return Optional.of(panel.line());
            } catch (IllegalArgumentException e) {
                panel.words.setText(String.valueOf(e.getMessage()));
            }
        }
        return Optional.empty();
    }
}
