package tallywell.gui;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;

/** Finds components by the names they carry. */
final class Windows {
    private Windows() {}

    static Component find(Container in, String name) {
        List<Component> found =
                all(in).stream().filter(each -> name.equals(each.getName())).toList();
        if (found.isEmpty()) {
            throw new AssertionError("there is no component '" + name + "'");
        }
        return found.get(0);
    }

    static List<Component> all(Container in) {
        List<Component> all = new ArrayList<>();
        for (Component each : in.getComponents()) {
            all.add(each);
            if (each instanceof Container inner) {
                all.addAll(all(inner));
            }
        }
        return all;
    }
}
