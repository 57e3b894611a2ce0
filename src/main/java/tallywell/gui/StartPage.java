package tallywell.gui;

import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.geom.RoundRectangle2D;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.KeyStroke;
import javax.swing.SpinnerNumberModel;
import javax.swing.event.PopupMenuEvent;
import javax.swing.event.PopupMenuListener;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Settings;
import tallywell.desk.WellFace;

/** Where one begins. */
final class StartPage extends JPanel {
    private static final int MOST_RECENT = 5;
    private static final int MOST_LAYOUTS = 3;
    private static final String LINK = "span 2, growx, wrap";

    /** What can be begun. */
    interface Begin {
        void example();

        void exports();

        void draw();

        void earlier();

        void practice();

        void open();
    }

    StartPage(Begin begin, Host host, Said said) {
        super(new MigLayout(
                "insets 28 40 20 40, fill, hidemode 2, gapx 32", "[52%, fill][48%, fill]", "[][][][grow, fill][]"));
        add(Labels.title(Text.of("start.title")), "span 2, wrap");
        add(Labels.wrapped(Text.of("start.about"), true), "span 2, growx, wmin 200, wrap 14");
        add(said, "span 2, growx, wrap");
        add(begins(begin), "grow");
        add(guide(begin, host, said), "grow, wrap");
        add(looks(new Looks(host, said), host), "span 2, growx");
        Keys.bind(this, KeyStroke.getKeyStroke(KeyEvent.VK_O, InputEvent.CTRL_DOWN_MASK), "open files", begin::open);
    }

    private static JPanel begins(Begin begin) {
        JPanel panel = new JPanel(new MigLayout("insets 0, fillx, gapy 12", "[grow, fill]", ""));
        panel.setOpaque(false);
        panel.add(new Way("start.example", WellFace.Shape.STANDARD, true, begin::example), "wrap");
        panel.add(new Way("start.exports", WellFace.Shape.SAMPLE, false, begin::exports), "wrap");
        panel.add(new Way("start.draw", WellFace.Shape.BLANK, false, begin::draw), "wrap");
        panel.add(new Way("start.earlier", WellFace.Shape.CONTROL, false, begin::earlier), "wrap");
        return panel;
    }

    private static JPanel guide(Begin begin, Host host, Said said) {
        Card card = new Card(new MigLayout("insets 18, fillx, gapy 4, hidemode 3", "[24!][grow, fill]", ""));
        card.add(Labels.heading(Text.of("start.steps")), "span 2, wrap 6");
        for (int i = 1; i <= 5; i++) {
            card.add(Labels.strong(Integer.toString(i)), "top");
            card.add(Labels.wrapped(Text.of("start.step." + i), false), "wmin 120, wrap 6");
        }
        JPanel files = new WrapRow(8);
        files.add(Fields.button(Text.of("open.files"), begin::open));
        files.add(Fields.button(Text.of("start.practice"), begin::practice));
        card.add(files, "skip 1, growx, wrap 10");
        recent(card, host, said);
        return card;
    }

    /** What was worked on lately comes in as soon as it is known to be still there. */
    private static void recent(Card card, Host host, Said said) {
        Settings settings = host.settings();
        host.jobs().aside(said, progress -> List.of(settings.recent("run"), settings.recent("layout")), found -> {
            List<Path> runs = found.get(0);
            List<Path> layouts = found.get(1);
            links(card, "start.recent.runs", runs.stream().limit(MOST_RECENT).toList(), host::openRun);
            links(
                    card,
                    "start.recent.layouts",
                    layouts.stream().limit(MOST_LAYOUTS).toList(),
                    host::openLayout);
            card.revalidate();
            card.repaint();
        });
    }

    private static void links(Card card, String heading, List<Path> files, Consumer<Path> open) {
        if (!files.isEmpty()) {
            card.add(Labels.heading(Text.of(heading)), "span 2, wrap");
            files.forEach(file -> card.add(link(file, () -> open.accept(file)), LINK));
        }
    }

    private static JButton link(Path file, Runnable action) {
        Path folder = file.getParent();
        JButton button =
                Fields.button((folder == null ? "" : folder.getFileName() + " / ") + file.getFileName(), action);
        button.setHorizontalAlignment(javax.swing.SwingConstants.LEFT);
        button.setToolTipText(file.toString());
        return button;
    }

    private JPanel looks(Looks looks, Host host) {
        JPanel panel = new JPanel(new MigLayout("insets 8 0 0 0", "[][][][]push[]", ""));
        panel.setOpaque(false);
        JComboBox<String> look = new JComboBox<>(
                Stream.of(Settings.Look.values()).map(Looks::words).toArray(String[]::new));
        look.setName("look");
        look.getAccessibleContext().setAccessibleName(Text.of("look.title"));
        JSpinner size = new JSpinner(new SpinnerNumberModel(Theme.USUAL, Theme.SMALLEST, Theme.LARGEST, 1));
        size.getAccessibleContext().setAccessibleName(Text.of("look.size"));
        Runnable follow = () -> {
            size.setValue(Desktop.size(host.settings()));
            if (look.getSelectedIndex() != host.settings().look().ordinal()) {
                look.setSelectedIndex(host.settings().look().ordinal());
            }
        };
        follow.run();
        looks.onChange(follow);
        looks.keys(this);
        Runnable change = () -> looks.choose(Settings.Look.values()[look.getSelectedIndex()], Fields.value(size));
        look.addActionListener(event -> {
            // While the list is open, arrows only move in it.
            if (!look.isPopupVisible()) {
                change.run();
            }
        });
        look.addPopupMenuListener(new Closing(change));
        size.addChangeListener(event -> change.run());
        panel.add(Labels.soft(Text.of("look.title")));
        panel.add(look);
        panel.add(Labels.soft(Text.of("look.size")));
        panel.add(size);
        panel.add(Labels.soft(Text.of("start.caution")), "wmin 100");
        return panel;
    }

    /** Takes the choice when its list closes. */
    private record Closing(Runnable change) implements PopupMenuListener {
        @Override
        public void popupMenuWillBecomeVisible(PopupMenuEvent event) {
            // Nothing is chosen yet.
        }

        @Override
        public void popupMenuWillBecomeInvisible(PopupMenuEvent event) {
            EventQueue.invokeLater(change);
        }

        @Override
        public void popupMenuCanceled(PopupMenuEvent event) {
            // What is closing is told as well.
        }
    }

    /** One way to begin: a large button with a title and a sentence. */
    private static final class Way extends JButton {
        private final String detail;
        private final WellFace.Shape shape;
        private final boolean first;

        Way(String key, WellFace.Shape shape, boolean first, Runnable action) {
            super(Text.of(key));
            this.detail = Text.of(key + ".is");
            this.shape = shape;
            this.first = first;
            setName(key);
            setContentAreaFilled(false);
            setBorderPainted(false);
            setFocusPainted(false);
            setOpaque(false);
            setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
            getAccessibleContext().setAccessibleDescription(detail);
            addActionListener(event -> action.run());
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(420, (int) (getFontMetrics(getFont()).getHeight() * 4.4));
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            Palette palette = Palette.now();
            RoundRectangle2D shape2d = new RoundRectangle2D.Double(1, 1, getWidth() - 3.0, getHeight() - 3.0, 20, 20);
            Color ground = first ? palette.accent() : getModel().isRollover() ? palette.tint() : palette.card();
            g.setColor(ground);
            g.fill(shape2d);
            g.setColor(
                    isFocusOwner()
                            ? (first ? palette.ink() : palette.accent())
                            : first ? palette.accent() : palette.line());
            g.draw(shape2d);
            new RoleGlyph(shape, 34).paintIcon(this, g, 20, (getHeight() - 34) / 2);
            Font title = getFont().deriveFont(Font.BOLD, getFont().getSize2D() * 1.2f);
            Font small = getFont().deriveFont(Font.PLAIN);
            FontMetrics big = g.getFontMetrics(title);
            int y = getHeight() / 2 - 4;
            g.setFont(title);
            g.setColor(first ? palette.onAccent() : palette.ink());
            g.drawString(getText(), 74, y);
            g.setFont(small);
            g.setColor(first ? palette.onAccent() : palette.soft());
            g.drawString(detail, 74, y + big.getHeight());
            g.dispose();
        }
    }
}
