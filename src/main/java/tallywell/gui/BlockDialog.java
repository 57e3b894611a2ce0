package tallywell.gui;

import java.awt.Component;
import java.util.OptionalInt;
import javax.swing.ButtonGroup;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import net.miginfocom.swing.MigLayout;
import tallywell.readings.Block;
import tallywell.readings.Export;

/** Asks which of several blocks of an export belongs to the run. */
final class BlockDialog {
    private BlockDialog() {}

    static OptionalInt ask(Component owner, Export export) {
        JPanel panel = new JPanel(new MigLayout("insets 4, gapy 6", "[grow]", ""));
        panel.add(
                Labels.plain(Text.of(
                        "block.about",
                        export.file().getFileName(),
                        export.blocks().size())),
                "wrap 8");
        ButtonGroup group = new ButtonGroup();
        for (Block block : export.blocks()) {
            JRadioButton button = new JRadioButton(block.summary());
            button.setActionCommand(Integer.toString(block.number()));
            button.setSelected(block.number() == 1);
            group.add(button);
            panel.add(button, "wrap");
        }
        boolean chosen = JOptionPane.showConfirmDialog(
                        owner, panel, Text.of("block.title"), JOptionPane.OK_CANCEL_OPTION, JOptionPane.PLAIN_MESSAGE)
                == JOptionPane.OK_OPTION;
        return chosen ? OptionalInt.of(Integer.parseInt(group.getSelection().getActionCommand())) : OptionalInt.empty();
    }
}
