package tallywell.gui;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;

/** A row of components that goes on below where it gets too long. */
final class WrapRow extends JPanel {
    WrapRow(int gap) {
        super(new Wrapping(gap));
        setOpaque(false);
    }

    /** Places the components from the left, line after line. */
    private record Wrapping(int gap) implements LayoutManager {
        @Override
        public void addLayoutComponent(String name, Component component) {
            // Components need no names here.
        }

        @Override
        public void removeLayoutComponent(Component component) {
            // Nothing is kept of components.
        }

        @Override
        public Dimension preferredLayoutSize(Container parent) {
            Dimension whole = place(parent, Integer.MAX_VALUE / 2, false);
            // As wide as one line would be, so that a row that was broken once can be whole again where there is room.
            return parent.getWidth() == 0
                    ? whole
                    : new Dimension(whole.width, place(parent, parent.getWidth(), false).height);
        }

        @Override
        public Dimension minimumLayoutSize(Container parent) {
            return new Dimension(100, preferredLayoutSize(parent).height);
        }

        @Override
        public void layoutContainer(Container parent) {
            Dimension before = parent.getSize();
            Dimension needed = place(parent, parent.getWidth(), true);
            if (needed.height != before.height && parent instanceof JPanel panel) {
                panel.revalidate();
            }
        }

        private Dimension place(Container parent, int width, boolean move) {
            int y = 0;
            int widest = 0;
            for (List<Component> line : lines(parent, width)) {
                int height = line.stream()
                        .mapToInt(each -> each.getPreferredSize().height)
                        .max()
                        .orElse(0);
                int x = 0;
                for (Component each : line) {
                    Dimension size = each.getPreferredSize();
                    if (move) {
                        each.setBounds(x, y + (height - size.height) / 2, size.width, size.height);
                    }
                    x += size.width + gap;
                }
                widest = Math.max(widest, x - gap);
                y += height + gap;
            }
            return new Dimension(widest, Math.max(0, y - gap));
        }

        private List<List<Component>> lines(Container parent, int width) {
            List<List<Component>> lines = new ArrayList<>();
            int x = width + 1;
            for (Component each : parent.getComponents()) {
                if (!each.isVisible()) {
                    continue;
                }
                int wide = each.getPreferredSize().width;
                if (x + wide > width) {
                    lines.add(new ArrayList<>());
                    x = 0;
                }
                lines.get(lines.size() - 1).add(each);
                x += wide + gap;
            }
            return lines;
        }
    }
}
