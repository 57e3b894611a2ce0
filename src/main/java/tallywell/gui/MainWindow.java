package tallywell.gui;

import java.awt.BorderLayout;
import javax.swing.JComponent;
import javax.swing.JFrame;

final class MainWindow extends JFrame {
    void page(JComponent page) {
        getContentPane().removeAll();
        getContentPane().add(page, BorderLayout.CENTER);
        getContentPane().revalidate();
        getContentPane().repaint();
    }
}
