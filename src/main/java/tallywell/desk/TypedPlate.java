package tallywell.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** Readings that a person typed or pasted, put into a file so that a run can name them like any export. */
public final class TypedPlate {
    private TypedPlate() {}

    /** The wells to type, column by column as they are pipetted: those in use, or all without a layout. */
    public static List<Well> wells(Optional<Layout> layout, PlateFormat format) {
        List<Well> wells =
                new ArrayList<>(layout.map(each -> each.where(content -> !(content instanceof Content.Unused)))
                        .orElseGet(format::all));
        wells.sort(java.util.Comparator.comparingInt(Well::column).thenComparingInt(Well::row));
        return wells;
    }

    /**
     * A table of wells and absorbances as text.
     *
     * @param typed what stands beside each well; empty cells are wells that were not read
     * @throws InputException naming the first well whose text is no number
     */
    public static String csv(List<Well> wells, List<String> typed, Shown shown) throws InputException {
        StringBuilder text = new StringBuilder("well,absorbance\n");
        int read = 0;
        for (int i = 0; i < wells.size(); i++) {
            String cell = shown.pointed(typed.get(i).strip());
            if (cell.isEmpty()) {
                continue;
            }
            if (!cell.matches("[+-]?(\\d+([.]\\d*)?|[.]\\d+)|over")) {
                throw new InputException(
                        Place.well(wells.get(i).toString()),
                        "found '" + typed.get(i).strip() + "'; expected an absorbance such as " + shown.fixed(0.352, 3)
                                + ", or over");
            }
            text.append(wells.get(i)).append(',').append(cell).append('\n');
            read++;
        }
        if (read == 0) {
            throw new InputException(Place.nowhere(), "found no readings; expected an absorbance beside the wells");
        }
        return text.toString();
    }

    /** Writes a text under a name that is free in a folder. */
    public static Path file(Path folder, String name, String text) throws OutputException {
        String plain = name.strip().replaceAll("[^\\p{L}\\p{N} _-]+", "-");
        Path target = folder.resolve((plain.isEmpty() ? "readings" : plain) + ".csv");
        for (int i = 2; Files.exists(target); i++) {
            target = folder.resolve((plain.isEmpty() ? "readings" : plain) + "-" + i + ".csv");
        }
        SafeFile.write(target, text.endsWith("\n") ? text : text + "\n");
        return target;
    }
}
