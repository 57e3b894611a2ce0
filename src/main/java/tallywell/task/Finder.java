package tallywell.task;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** Finds the files that a run names. */
interface Finder {
    /**
     * A file that was found.
     *
     * @param path where its bytes are
     * @param name what messages and reports call it
     */
    record Found(Path path, String name) {}

    /**
     * The file that a run names.
     *
     * @param role what it is read as
     * @param typed as the run names it
     */
    Found find(String role, String typed) throws InputException;

    /** Whether a method with this name is the file that {@link #find} gives, also where one of that id is built in. */
    boolean hasMethod(String typed);

    /** Files on this computer, relative to a run file. */
    final class OnDisk implements Finder {
        private final String name;
        private final Optional<Path> runFile;

        /**
         * Files named by a run.
         *
         * @param name of the run, for messages
         * @param runFile what paths are relative to; none for a run named on the command line
         */
        OnDisk(String name, Optional<Path> runFile) {
            this.name = name;
            this.runFile = runFile;
        }

        @Override
        public Found find(String role, String typed) throws InputException {
            try {
                Path path = Path.of(typed);
                Path found = runFile.map(file -> file.resolveSibling(path))
                        .orElse(path)
                        .normalize();
                return new Found(found, found.toString());
            } catch (InvalidPathException e) {
                throw new InputException(
                        new Place.InFile(name, ""),
                        "found the path '" + typed + "', which this system does not allow",
                        e);
            }
        }

        @Override
        public boolean hasMethod(String typed) {
            return false;
        }
    }

    /** Another finder that notes every file it finds, read whole or not. */
    record Noting(Finder finder, Collection<Path> seen) implements Finder {
        @Override
        public Found find(String role, String typed) throws InputException {
            Found found = finder.find(role, typed);
            seen.add(found.path());
            return found;
        }

        @Override
        public boolean hasMethod(String typed) {
            return finder.hasMethod(typed);
        }
    }
}
