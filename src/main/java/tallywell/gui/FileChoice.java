package tallywell.gui;

import java.awt.Component;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Settings;

/** Asks for files. */
final class FileChoice {
    private static final int ABOUT_WIDTH = 190;

    private final Component owner;
    private final Settings settings;
    private final Path home;
    private Optional<File> last = Optional.empty();

    FileChoice(Component owner, Settings settings, Path home) {
        this.owner = owner;
        this.settings = settings;
        this.home = home;
    }

    /** Files to open; none if given up. */
    List<Path> open(String title) {
        JFileChooser chooser =
                new JFileChooser(last.orElseGet(() -> lastFolder().toFile()));
        chooser.setDialogTitle(title);
        chooser.setMultiSelectionEnabled(true);
        List<Path> files = new ArrayList<>();
        if (chooser.showOpenDialog(owner) == JFileChooser.APPROVE_OPTION) {
            for (File file : chooser.getSelectedFiles()) {
                files.add(file.toPath());
            }
            last = Optional.of(chooser.getCurrentDirectory());
        }
        return files;
    }

    /** Where the last run is, else where the user's own files are. */
    private Path lastFolder() {
        Path own = home.toAbsolutePath().getParent();
        return settings.known("run").stream()
                .map(Path::getParent)
                .filter(java.util.Objects::nonNull)
                .findFirst()
                .orElse(own == null ? home : own);
    }

    /**
     * A place to save to; empty if given up.
     *
     * @param about what is written there; empty if the title says it all
     */
    Optional<Path> save(String title, String about, Path suggested) {
        JFileChooser chooser = new JFileChooser();
        chooser.setDialogTitle(title);
        if (!about.isEmpty()) {
            chooser.setAccessory(aside(about));
        }
        chooser.setSelectedFile(home.resolve(suggested).toFile());
        if (chooser.showSaveDialog(owner) != JFileChooser.APPROVE_OPTION) {
            return Optional.empty();
        }
        File chosen = chooser.getSelectedFile();
        boolean replace = !chosen.exists()
                || JOptionPane.showConfirmDialog(
                                owner,
                                Text.of("save.replace", chosen.getName()),
                                title,
                                JOptionPane.OK_CANCEL_OPTION,
                                JOptionPane.WARNING_MESSAGE)
                        == JOptionPane.OK_OPTION;
        return replace ? Optional.of(chosen.toPath()) : Optional.empty();
    }

    private static JPanel aside(String about) {
        JPanel panel = new JPanel(new MigLayout("insets 0 12 0 4", "[" + ABOUT_WIDTH + "!, fill]", ""));
        panel.add(Labels.wrapped(about, true), "wmin 100");
        return panel;
    }
}
