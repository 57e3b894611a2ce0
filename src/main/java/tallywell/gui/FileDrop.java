package tallywell.gui;

import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.TransferHandler;

/** Takes files that are dropped anywhere. */
final class FileDrop extends TransferHandler {
    private final Consumer<List<Path>> taker;

    FileDrop(Consumer<List<Path>> taker) {
        this.taker = taker;
    }

    @Override
    public boolean canImport(TransferSupport support) {
        return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
    }

    @Override
    public boolean importData(TransferSupport support) {
        if (!canImport(support)) {
            return false;
        }
        try {
            List<Path> paths = new ArrayList<>();
            if (support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor) instanceof List<?> files) {
                for (Object each : files) {
                    if (each instanceof File file) {
                        paths.add(file.toPath());
                    }
                }
            }
            taker.accept(paths);
            return !paths.isEmpty();
        } catch (UnsupportedFlavorException | IOException e) {
            // The other program took its files back; nothing was dropped.
            return false;
        }
    }
}
