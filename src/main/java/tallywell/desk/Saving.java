package tallywell.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import tallywell.notice.OutputException;

/** The files of one run being saved. */
final class Saving {
    private final Path folder;
    private final boolean copies;
    private final Set<Path> taken = new HashSet<>();

    Saving(Path runFile, boolean copies) {
        Path parent = runFile.toAbsolutePath().normalize().getParent();
        this.folder = parent == null ? runFile.toAbsolutePath() : parent;
        this.copies = copies;
        taken.add(runFile.toAbsolutePath().normalize());
    }

    Bench bench(Bench bench) throws OutputException {
        Optional<Path> plan = bench.plan();
        Optional<Path> earlier = bench.earlier();
        return new Bench(
                plan.isPresent() ? Optional.of(copy(plan.get())) : plan,
                bench.planning(),
                earlier.isPresent() ? Optional.of(copy(earlier.get())) : earlier);
    }

    /** Where a part of the run is, or is put now. */
    Path place(Origin<?> origin, String name, String text) throws OutputException {
        if (origin.file().isPresent()) {
            return copy(origin.file().get());
        }
        Path target = free(name);
        SafeFile.write(target, text);
        return target;
    }

    Path copy(Path from) throws OutputException {
        if (!copies) {
            return from;
        }
        Path source = from.toAbsolutePath().normalize();
        if (folder.equals(source.getParent())) {
            taken.add(source);
            return source;
        }
        try {
            Path same = folder.resolve(source.getFileName());
            if (!taken.contains(same) && Files.isRegularFile(same) && Files.mismatch(source, same) < 0) {
                taken.add(same);
                return same;
            }
        } catch (IOException e) {
            throw new OutputException(source, "cannot be read (" + e.getMessage() + ")", e);
        }
        Path target = free(String.valueOf(from.getFileName()));
        try {
            Files.createDirectories(folder);
            Files.copy(source, target);
        } catch (IOException e) {
            throw new OutputException(target, "cannot be copied (" + e.getMessage() + ")", e);
        }
        return target;
    }

    /** A name that neither this run nor any file in the folder has yet. */
    private Path free(String name) {
        Path target = folder.resolve(name);
        for (int i = 2; Files.exists(target) || !taken.add(target); i++) {
            target = folder.resolve(i + "-" + name);
        }
        return target;
    }

    /** The path as a run file has it: relative, with slashes, if that is possible. */
    String typed(Path file) {
        Path whole = file.toAbsolutePath().normalize();
        boolean sameRoot = whole.getRoot() != null && whole.getRoot().equals(folder.getRoot());
        return sameRoot ? folder.relativize(whole).toString().replace('\\', '/') : whole.toString();
    }
}
