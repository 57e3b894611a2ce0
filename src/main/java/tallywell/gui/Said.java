package tallywell.gui;

import java.awt.Color;
import java.util.List;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import tallywell.notice.Notice;

/** A line above the work that says what went wrong or what to do, until the next step; it never blocks. */
final class Said extends Card {
    private final JLabel icon = new JLabel(Glyph.look(18));
    private final JTextArea text = Labels.wrapped("", false);
    private final JButton offer = new JButton();
    private Runnable offered = () -> {};

    Said() {
        super(new MigLayout("insets 8 12 8 12, fillx, hidemode 3", "[][grow, fill][]", "[]"));
        add(icon, "top");
        add(text, "wmin 100");
        offer.addActionListener(event -> offered.run());
        offer.setVisible(false);
        add(offer);
        JButton close = Fields.button(Text.of("said.close"), this::clear);
        add(close);
        text.setName("said");
        setVisible(false);
    }

    @Override
    Color edge() {
        return Palette.now().attention();
    }

    void problem(List<Notice> notices) {
        say(notices.stream()
                .map(Notice::toString)
                .map(line -> line.isEmpty() ? line : Character.toUpperCase(line.charAt(0)) + line.substring(1))
                .limit(6)
                .collect(Collectors.joining("\n")));
    }

    void hint(String words) {
        say(words);
    }

    /** Says something and offers the cure. */
    void offer(String words, String cure, Runnable action) {
        say(words);
        offer.setText(cure);
        offered = () -> {
            clear();
            action.run();
        };
        offer.setVisible(true);
    }

    void clear() {
        offer.setVisible(false);
        setVisible(false);
    }

    private void say(String words) {
        offer.setVisible(false);
        text.setText(words);
        text.getAccessibleContext().setAccessibleName(words);
        setVisible(true);
        revalidate();
    }

    String words() {
        return isVisible() ? text.getText() : "";
    }
}
