package tallywell.notice;

import java.nio.file.Path;

/** Where a notice points to. */
public sealed interface Place {
    /** The place in the words of a message, empty if it is nowhere. */
    String text();

    /** Nowhere in particular. */
    static Place nowhere() {
        return new Nowhere();
    }

    /** A whole file. */
    static Place file(Path path) {
        return new InFile(path.toString(), "");
    }

    /** A line of a text file, counted from 1. */
    static Place line(Path path, int line) {
        return new InFile(path.toString(), "line " + line);
    }

    /** Some part of a file, such as {@code sheet 'Run 1', cell B7}. */
    static Place in(Path path, String where) {
        return new InFile(path.toString(), where);
    }

    /** A well of a plate. */
    static Place well(String well) {
        return new InWell(well);
    }

    /** No place. */
    record Nowhere() implements Place {
        @Override
        public String text() {
            return "";
        }
    }

    /**
     * In a file.
     *
     * @param file the path as the user typed it
     * @param where the line, cell or sheet; empty for the whole file
     */
    record InFile(String file, String where) implements Place {
        @Override
        public String text() {
            return where.isEmpty() ? file : file + ", " + where;
        }
    }

    /**
     * In a well.
     *
     * @param well such as {@code B7}
     */
    record InWell(String well) implements Place {
        @Override
        public String text() {
            return "well " + well;
        }
    }
}
