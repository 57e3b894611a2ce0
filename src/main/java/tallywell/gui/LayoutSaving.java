package tallywell.gui;

import java.awt.Component;
import java.nio.file.Path;
import java.util.List;
import javax.swing.JOptionPane;
import tallywell.desk.Examples;
import tallywell.desk.FileNames;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutWords;
import tallywell.plate.Layout;

/** Saves a layout, and hands it to a run. */
final class LayoutSaving {
    private final Component owner;
    private final LayoutDesk desk;
    private final Host host;
    private final Said said;

    LayoutSaving(Component owner, LayoutDesk desk, Host host, Said said) {
        this.owner = owner;
        this.desk = desk;
        this.host = host;
        this.said = said;
    }

    /** The title of a layout; nothing as long as nobody has given one. */
    static String title(Layout layout) {
        return layout.name().equals(Text.of("layout.new")) ? "" : layout.name();
    }

    /** Saves under the known name, else asks for one, then goes on. */
    void save(Runnable then) {
        // One's own layout does not go over one that comes with the program.
        desk.file()
                .filter(file -> !Examples.isBundledLayout(file))
                .or(() -> host.askSave(Text.of("layout.save"), suggested()))
                .ifPresent(target -> save(target, then));
    }

    /** Goes on to a run with this layout; what is not saved yet can be saved first. */
    void use() {
        if (desk.file().isPresent() && !desk.history().isUnsaved()) {
            host.useLayout(desk.drawn());
            return;
        }
        Object[] answers = {Text.of("layout.use.save"), Text.of("layout.use.so"), Text.of("leave.stay")};
        int answer = JOptionPane.showOptionDialog(
                owner,
                Text.of("layout.use.about"),
                Text.of("leave.title"),
                JOptionPane.YES_NO_CANCEL_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            save(() -> host.useLayout(desk.drawn()));
        } else if (answer == 1) {
            entitle(LayoutWords.held(desk.layout()));
            host.useLayout(desk.drawn());
        }
    }

    private void entitle(String title) {
        desk.title(Text.of("layout.new"), title, Text.of("edit.rename"));
    }

    private Path suggested() {
        String plain = FileNames.of(title(desk.layout()));
        return Path.of("plate-layouts", (plain.isEmpty() ? "layout" : plain) + ".yaml");
    }

    private void save(Path target, Runnable then) {
        entitle(FileNames.title(target));
        Layout layout = desk.layout();
        host.jobs()
                .run(
                        said,
                        Text.of("layout.saving"),
                        Jobs.Cancel.NEVER,
                        progress -> {
                            LayoutDesk.write(layout, target);
                            return target;
                        },
                        written -> {
                            desk.saved(layout, target);
                            host.savedLayout(target);
                            said.clear();
                            then.run();
                        },
                        e -> said.offer(
                                OutputWords.of(e),
                                List.of(
                                        new Said.Offer(Text.of("again"), () -> save(target, then)),
                                        new Said.Offer(
                                                Text.of("layout.elsewhere"),
                                                () -> host.askSave(Text.of("layout.save"), suggested())
                                                        .ifPresent(other -> save(other, then))))));
    }
}
