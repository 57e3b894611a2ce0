package tallywell.gui;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import tallywell.notice.Notice;

/** A line above the work that says what went wrong, what goes on or what to do, until the next step; it never blocks. */
final class Said extends Card {
    private static final String BESIDE = "cell 2 0, ay center";
    private static final String BELOW = "cell 1 1 3 1, growx 0, wmin 0";
    private static final int MOST_BESIDE = 44;
    private static final int SIGN = 18;

    private final JTextArea text = Labels.wrapped("", false);
    private final JProgressBar bar = new JProgressBar();
    private final JPanel offers = new JPanel(new MigLayout("insets 0, gap 6, hidemode 3", "", ""));
    private final JButton close = Fields.button(Text.of("said.close"), this::clear);
    private final JButton cancel = Fields.button(Text.of("job.cancel"), this::cancel);
    private Optional<Runnable> cancelled = Optional.empty();
    private Optional<Runnable> before = Optional.empty();
    private List<Offer> offered = List.of();
    private final JLabel sign = new JLabel(Glyph.look(SIGN));
    private boolean busy;
    private boolean good;

    /**
     * Something that can be done about it.
     *
     * @param words of its button
     * @param action what the button does
     */
    record Offer(String words, Runnable action) {}

    Said() {
        super(new MigLayout("insets 8 12 8 12, fillx, hidemode 3", "[][grow, fill][][]", "[][]"));
        add(sign, "cell 0 0");
        add(text, "cell 1 0, wmin 100");
        add(bar, "cell 2 0, w 160!");
        offers.setOpaque(false);
        add(cancel, "cell 3 0, ay center");
        add(close, "cell 3 0, ay center");
        add(offers, BESIDE);
        cancel.setName("cancel");
        text.setName("said");
        bar.getAccessibleContext().setAccessibleName(Text.of("job.progress"));
        setVisible(false);
    }

    @Override
    Color edge() {
        return busy
                ? Palette.now().edge()
                : good ? Palette.now().good() : Palette.now().attention();
    }

    void problem(List<Notice> notices) {
        hint(inWords(notices));
    }

    private static String inWords(List<Notice> notices) {
        return notices.stream()
                .map(Notice::toString)
                .map(line -> line.isEmpty() ? line : Character.toUpperCase(line.charAt(0)) + line.substring(1))
                .limit(6)
                .collect(Collectors.joining("\n"));
    }

    void hint(String words) {
        offer(words, List.of());
    }

    /** Says something and offers the cure. */
    void offer(String words, String cure, Runnable action) {
        offer(words, List.of(new Offer(cure, action)));
    }

    /** Says that something is done, and what can be done with it. */
    void done(String words, List<Offer> next) {
        offer(words, next);
        good = true;
        sign.setIcon(Glyph.good(SIGN));
        repaint();
    }

    /** Says something and offers what can be done. */
    void offer(String words, List<Offer> cures) {
        busy = false;
        say(words);
        List<JButton> buttons = new ArrayList<>();
        for (Offer each : cures) {
            JButton button = Fields.button(each.words(), () -> {
                clear();
                each.action().run();
            });
            button.setName("offer");
            buttons.add(button);
        }
        offered = List.copyOf(cures);
        offers.removeAll();
        buttons.forEach(offers::add);
        int letters = cures.stream().mapToInt(each -> each.words().length()).sum();
        boolean beside = cures.size() <= 2 && letters <= MOST_BESIDE;
        ((MigLayout) getLayout()).setComponentConstraints(offers, beside ? BESIDE : BELOW);
        offers.setVisible(!buttons.isEmpty());
        parts();
    }

    /** Says what goes on, with a way to stop it if there is one; what was said before comes back afterwards. */
    void busy(String words, Optional<Runnable> cancelling) {
        if (!busy) {
            before = isVisible() ? Optional.of(again()) : Optional.empty();
        }
        busy = true;
        cancelled = cancelling;
        bar.setIndeterminate(true);
        say(words);
        parts();
    }

    /** How far it has come. */
    void progress(String words, int done, int of) {
        if (busy) {
            bar.setIndeterminate(false);
            bar.setMaximum(of);
            bar.setValue(done);
            text.setText(words + " " + (done + 1) + " / " + of);
        }
    }

    /** Says once more what is said now. */
    private Runnable again() {
        String words = text.getText();
        List<Offer> cures = offered;
        boolean wasGood = good;
        return () -> {
            if (wasGood) {
                done(words, cures);
            } else {
                offer(words, cures);
            }
        };
    }

    /** What went on is over. */
    void idle() {
        if (busy) {
            busy = false;
            before.ifPresentOrElse(Runnable::run, this::clear);
        }
    }

    void clear() {
        busy = false;
        offers.removeAll();
        offers.setVisible(false);
        setVisible(false);
    }

    private void cancel() {
        cancelled.ifPresent(Runnable::run);
    }

    private void parts() {
        bar.setVisible(busy);
        cancel.setVisible(busy && cancelled.isPresent());
        close.setVisible(!busy);
        if (busy) {
            offers.setVisible(false);
            offered = List.of();
        }
        revalidate();
        repaint();
    }

    private void say(String words) {
        good = false;
        sign.setIcon(busy ? Glyph.missing(SIGN) : Glyph.look(SIGN));
        text.setText(words);
        text.getAccessibleContext().setAccessibleName(words);
        setVisible(true);
        revalidate();
    }

    String words() {
        return isVisible() ? text.getText() : "";
    }

    boolean isBusy() {
        return busy;
    }
}
