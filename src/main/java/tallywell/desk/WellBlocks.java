package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tallywell.plate.Well;

/** Names wells by the rectangles that they form, so that no well is named that is not among them. */
final class WellBlocks {
    private static final int ONE_BY_ONE = 4;
    private static final int MOST = 4;

    /**
     * A rectangle; lines and places are columns and rows, or rows and columns.
     *
     * @param firstLine from 0
     * @param lastLine from 0
     * @param from first place in each line
     * @param to last place in each line
     */
    private record Block(int firstLine, int lastLine, int from, int to) {
        boolean goesOn(int line, int first, int last) {
            return lastLine == line - 1 && from == first && to == last;
        }

        String words(boolean byColumns) {
            Well first = byColumns ? new Well(from, firstLine) : new Well(firstLine, from);
            Well last = byColumns ? new Well(to, lastLine) : new Well(lastLine, to);
            return first.equals(last) ? first.toString() : first + " to " + last;
        }
    }

    private WellBlocks() {}

    /** The wells in words; of many blocks the first ones. Empty for no wells. */
    static String words(Collection<Well> wells) {
        if (wells.size() <= ONE_BY_ONE) {
            return new TreeSet<>(wells).stream().map(Well::toString).collect(Collectors.joining(", "));
        }
        List<Block> columns = blocks(wells, true);
        List<Block> rows = blocks(wells, false);
        boolean byColumns = columns.size() <= rows.size();
        List<Block> blocks = byColumns ? columns : rows;
        String named =
                blocks.stream().limit(MOST).map(block -> block.words(byColumns)).collect(Collectors.joining(", "));
        return wells.size() + " wells" + (blocks.size() == 1 ? ", " : ": ") + named
                + (blocks.size() > MOST ? " …" : "");
    }

    /** Unbroken pieces of each line; equal pieces of lines side by side are one block. */
    private static List<Block> blocks(Collection<Well> wells, boolean byColumns) {
        int lines =
                1 + wells.stream().mapToInt(well -> line(well, byColumns)).max().orElse(-1);
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < lines; i++) {
            int line = i;
            SortedSet<Integer> places = wells.stream()
                    .filter(well -> line(well, byColumns) == line)
                    .map(well -> line(well, !byColumns))
                    .collect(Collectors.toCollection(TreeSet::new));
            pieces(line, places, blocks);
        }
        return blocks;
    }

    private static int line(Well well, boolean byColumns) {
        return byColumns ? well.column() : well.row();
    }

    private static void pieces(int line, SortedSet<Integer> places, List<Block> into) {
        Iterator<Integer> rest = places.iterator();
        int from = -1;
        int to = -1;
        while (rest.hasNext()) {
            int place = rest.next();
            if (from >= 0 && place > to + 1) {
                put(line, from, to, into);
                from = place;
            } else if (from < 0) {
                from = place;
            }
            to = place;
        }
        if (from >= 0) {
            put(line, from, to, into);
        }
    }

    private static void put(int line, int from, int to, List<Block> into) {
        for (int i = 0; i < into.size(); i++) {
            Block block = into.get(i);
            if (block.goesOn(line, from, to)) {
                into.set(i, new Block(block.firstLine(), line, from, to));
                return;
            }
        }
        into.add(new Block(line, line, from, to));
    }
}
