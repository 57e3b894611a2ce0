package tallywell.gui;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.nio.file.Path;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;

/** The top of a run: its title, where it is, and what can be done with it as a whole. */
final class RunHeader extends JPanel {
    private static final int BETWEEN = 6;

    private final RunDesk desk;
    private final JTextField title = new JTextField(26);
    private final JLabel subtitle = Labels.soft("");
    private final JTextField operator = new JTextField(14);
    private final JButton undo;
    private final JButton redo;
    private final JButton exclude;
    private final JButton sum;
    private final JButton export;

    /** What the buttons do. */
    interface Actions {
        void start();

        void exclude();

        void sum();

        void plan();

        void save();

        void export();
    }

    RunHeader(RunDesk desk, Actions actions) {
        super(new MigLayout("insets 0, fillx, gapy 1, hidemode 3", "[grow, fill][]", "[][]"));
        this.desk = desk;
        setOpaque(false);
        undo = UndoButtons.undo(desk.history());
        redo = UndoButtons.redo(desk.history());
        exclude = new Steady(actions::exclude, Text.of("exclude"), Text.of("putback"));
        exclude.setName("exclude");
        sum = Fields.button(Text.of("sum"), actions::sum);
        titleField();
        JPanel buttons = new WrapRow(BETWEEN);
        buttons.add(Fields.button(Text.of("back"), actions::start));
        buttons.add(undo);
        buttons.add(redo);
        buttons.add(exclude);
        buttons.add(sum);
        buttons.add(named("plan", Fields.button(Text.of("plan.button"), actions::plan)));
        buttons.add(named("save", Fields.button(Text.of("run.save"), actions::save)));
        export = named("export", Fields.primary(Text.of("run.export"), actions::export));
        buttons.add(export);
        add(title, "wmin 280, wmax 640");
        add(buttons, "wmin 300, wrap");
        operatorField();
        JLabel name = Labels.soft(Text.of("run.operator"));
        name.setLabelFor(operator);
        JPanel below = new JPanel(new MigLayout("insets 0, fillx", "[grow, fill][][]", ""));
        below.setOpaque(false);
        below.add(subtitle, "wmin 60");
        below.add(name);
        below.add(operator);
        add(below, "span, growx");
    }

    /** A button whose words change; those beside it must not move under the mouse, so that it is as wide as the widest. */
    private static final class Steady extends JButton {
        private final List<String> words;

        Steady(Runnable action, String... words) {
            super(words[0]);
            this.words = List.of(words);
            addActionListener(event -> action.run());
        }

        @Override
        public Dimension getPreferredSize() {
            Dimension size = super.getPreferredSize();
            // The constructor of the superclass may ask before the field is set.
            if (words != null) {
                FontMetrics metrics = getFontMetrics(getFont());
                int widest = words.stream().mapToInt(metrics::stringWidth).max().orElse(0);
                size.width += widest - metrics.stringWidth(getText());
            }
            return size;
        }
    }

    private static JButton named(String name, JButton button) {
        button.setName(name);
        return button;
    }

    private void titleField() {
        title.setName("title");
        title.getAccessibleContext().setAccessibleName(Text.of("run.title"));
        title.putClientProperty("JTextField.placeholderText", Text.of("run.untitled"));
        title.putClientProperty("FlatLaf.styleClass", "h3");
        title.addActionListener(event -> commitTitle());
        title.addFocusListener(new FocusAdapter() {
            @Override
            public void focusLost(FocusEvent event) {
                commitTitle();
            }
        });
    }

    private void operatorField() {
        operator.setName("operator");
        operator.getAccessibleContext().setAccessibleName(Text.of("run.operator"));
        operator.putClientProperty("JTextField.placeholderText", Text.of("run.operator.hint"));
        operator.addActionListener(event -> commitTitle());
        operator.addFocusListener(new FocusAdapter() {
            @Override
            public void focusLost(FocusEvent event) {
                commitTitle();
            }
        });
    }

    /** Takes what is typed into the run. */
    void commitTitle() {
        String who = operator.getText().strip();
        if (!who.equals(desk.draft().operator())) {
            desk.history().edit(desk.draft().withOperator(who), Text.of("edit.operator"));
        }
        String typed = title.getText().strip();
        if (!typed.equals(desk.draft().title())) {
            desk.history().edit(desk.draft().withTitle(typed), Text.of("edit.rename"));
        }
    }

    void refresh(boolean summaryOlder) {
        RunDraft draft = desk.draft();
        if (!title.getText().strip().equals(draft.title()) && !title.isFocusOwner()) {
            title.setText(draft.title());
            title.setCaretPosition(0);
        }
        if (!operator.getText().strip().equals(draft.operator()) && !operator.isFocusOwner()) {
            operator.setText(draft.operator());
        }
        UndoButtons.refresh(desk.history(), undo, redo);
        String method = draft.method().map(each -> each.value().title()).orElse(Text.of("run.nomethod"));
        String where = draft.file().map(Path::toString).orElse(Text.of("run.nofile"));
        export.setEnabled(draft.isComplete() && desk.worked().problems().isEmpty());
        subtitle.setText(
                method + " · " + where + state(draft) + (summaryOlder ? " · " + Text.of("export.is.older") : ""));
    }

    /** Nothing is said of a run that nobody has begun. */
    private String state(RunDraft draft) {
        if (desk.isBusy()) {
            return " · " + Text.of("run.busy");
        }
        boolean begun = draft.file().isPresent() || desk.history().isUnsaved();
        return begun ? " · " + Text.of(desk.history().isUnsaved() ? "changed" : "saved") : "";
    }

    /** What can be done with what is selected. */
    void refreshSelection(boolean result) {
        exclude.setText(Text.of(desk.selectionIsExcluded() ? "putback" : "exclude"));
        exclude.setEnabled(!desk.selection().wells().isEmpty());
        sum.setEnabled(result);
    }
}
