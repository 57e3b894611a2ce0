package tallywell.task;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.recheck.CarriedRun;
import tallywell.recheck.Difference;
import tallywell.report.Carried;
import tallywell.report.CarriedFile;

/** Compares what a workbook carries with the hashes that it states, and with the original files. */
final class Originals {
    private final Path workbook;
    private final Optional<Path> folder;

    /**
     * Originals in a folder.
     *
     * @param folder that of the run file, if there is one to compare with
     */
    Originals(Path workbook, Optional<Path> folder) throws InputException {
        this.workbook = workbook;
        this.folder = folder;
        if (folder.isPresent() && !Files.isDirectory(folder.get())) {
            throw new InputException(
                    Place.file(folder.get()), "the folder does not exist; expected the one with the original files");
        }
    }

    /** Whether a file is a method of the program's own, of which there is no original elsewhere. */
    static boolean isBuiltIn(String typed, String name) {
        return name.equals(typed + " (built in)");
    }

    /** The files whose bytes are not those that the workbook states the hash of. */
    static List<Difference> hashes(CarriedRun run) {
        List<Difference> differences = new ArrayList<>();
        for (CarriedFile file : run.carried().files()) {
            String is = Hash.of(file.bytes());
            if (!is.equals(file.sha256())) {
                differences.add(changed(
                        "Inputs: " + file.name() + " (" + file.role() + ") was changed in the workbook",
                        file.sha256(),
                        is));
            }
        }
        return differences;
    }

    private static Difference changed(String what, String was, String is) {
        return new Difference(Difference.Kind.INPUT, what + ": SHA-256 was " + was + ", is " + is);
    }

    /** The originals that are not the files that were read, or are not there. */
    List<Difference> compared(CarriedRun run) throws InputException {
        List<Difference> differences = new ArrayList<>();
        if (folder.isEmpty()) {
            return differences;
        }
        for (CarriedFile file : run.carried().files()) {
            if (!isBuiltIn(file.typed(), file.name())) {
                compare(file.role(), file.typed(), file.name(), file.sha256()).ifPresent(differences::add);
            }
        }
        for (CarriedRun.Lost file : run.lost()) {
            compare(file.role(), file.typed(), file.name(), file.sha256()).ifPresent(differences::add);
        }
        return differences;
    }

    private Optional<Difference> compare(String role, String typed, String name, String sha256) throws InputException {
        Optional<Path> original = original(role, typed, name);
        if (original.isEmpty()) {
            return Optional.of(new Difference(
                    Difference.Kind.INPUT, name + " (" + role + ") is not found in " + folder.orElseThrow()));
        }
        String is = Hash.of(original.get());
        return is.equals(sha256)
                ? Optional.empty()
                : Optional.of(changed(original.get() + " (" + role + ") is not the file that was read", sha256, is));
    }

    /** The original: where the run names it, seen from the folder, or under its own name in the folder. */
    private Optional<Path> original(String role, String typed, String name) {
        List<Path> candidates = new ArrayList<>();
        Path in = folder.orElseThrow();
        try {
            Path path = Path.of(typed);
            if (!role.equals("run") && !path.isAbsolute()) {
                candidates.add(in.resolve(path).normalize());
            }
        } catch (InvalidPathException e) {
            // A path of another system; the name alone may still be found.
        }
        candidates.add(in.resolve(CarriedFiles.fileName(name)));
        return candidates.stream().filter(Files::isRegularFile).findFirst();
    }

    /**
     * The runs with every file they need, taking from the folder what the workbook could not carry.
     *
     * @throws InputException if a file is nowhere
     */
    List<CarriedRun> completed(List<CarriedRun> runs) throws InputException {
        List<CarriedRun> completed = new ArrayList<>();
        for (CarriedRun run : runs) {
            List<CarriedFile> files = new ArrayList<>(run.carried().files());
            for (CarriedRun.Lost lost : run.lost()) {
                files.add(found(lost));
            }
            completed.add(new CarriedRun(run.name(), new Carried(run.carried().settings(), files), List.of()));
        }
        return completed;
    }

    private CarriedFile found(CarriedRun.Lost lost) throws InputException {
        Optional<Path> original =
                folder.isPresent() ? original(lost.role(), lost.typed(), lost.name()) : Optional.empty();
        if (original.isPresent() && Hash.of(original.get()).equals(lost.sha256())) {
            byte[] bytes = ReportMaker.bytes(original.get(), original.get().toString());
            return new CarriedFile(lost.role(), lost.typed(), lost.name(), lost.sha256(), bytes);
        }
        throw new InputException(
                Place.file(workbook),
                "the workbook does not hold " + lost.name() + " (" + lost.role() + "): " + lost.why()
                        + "; name the folder of the original files with --against");
    }
}
