package tallywell.task;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;

/**
 * The files that one call writes: each is written under a hidden name beside its place, and all are moved into place
 * together when they are complete and on the disk. Where anything fails, nothing new is left behind and what was there
 * stays as it was; a call that is killed leaves hidden files only, or the next call finishes what it had begun.
 *
 * <p>No file that the call reads is ever replaced, by whatever name, and no file that this program has not written.
 */
final class Outputs implements Closeable {
    private final boolean overwrite;
    private final SameFiles read = new SameFiles();
    private final SameFiles named = new SameFiles();
    private final SameFiles kept = new SameFiles();
    private final Set<String> packed = new HashSet<>();
    private final Set<Path> cleared = new HashSet<>();
    private final HiddenFiles hidden = new HiddenFiles();
    private final Map<Path, Path> staged = new LinkedHashMap<>();
    private final List<Path> madeFolders = new ArrayList<>();
    private final List<Notice> notices = new ArrayList<>();
    private final Thread atExit = new Thread(this::interrupted, "outputs dropped");
    private boolean over;

    /**
     * Starts a set of outputs.
     *
     * @param overwrite whether an existing file of ours may be replaced
     * @param inputs files that are never replaced
     */
    Outputs(boolean overwrite, Collection<Path> inputs) {
        this.overwrite = overwrite;
        read.addAll(inputs);
        Runtime.getRuntime().addShutdownHook(atExit);
    }

    /** Writes a file; it reaches its place by {@link #commit()}. */
    interface Writing {
        void to(OutputStream out) throws IOException;
    }

    /** Keeps more files from being replaced, those of outputs that are named already included. */
    void protect(Collection<Path> inputs) throws OutputException {
        read.addAll(inputs);
        for (Path target : staged.keySet()) {
            refuseInput(target);
        }
    }

    /** Says that a file was written by the caller itself, whatever its content. */
    void keeps(Path file) {
        kept.add(file);
    }

    /** Says the hashes of files that stand in a data package of ours and may be replaced. */
    void knows(Collection<String> sha256) {
        packed.addAll(sha256);
    }

    /** What the user should be told of what a killed call has left. */
    List<Notice> notices() {
        return List.copyOf(notices);
    }

    /** Makes a folder for outputs, which goes again if the call fails. */
    void folder(Path folder) throws OutputException {
        List<Path> missing = new ArrayList<>();
        for (Path each = folder.toAbsolutePath().normalize();
                each != null && !Files.exists(each);
                each = each.getParent()) {
            missing.add(0, each);
        }
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException e) {
            throw new OutputException(folder, "is a file; expected a folder, or a new name", e);
        } catch (IOException e) {
            throw new OutputException(folder, "the folder cannot be made (" + reason(e) + ")", e);
        }
        madeFolders.addAll(missing);
    }

    /** Refuses a target that cannot be written, before any work is done for it. */
    void check(Path target) throws OutputException {
        Path folder = parent(target);
        if (!Files.isDirectory(folder)) {
            throw new OutputException(
                    target, "the folder " + folder + " does not exist; make it first, or choose another");
        }
        if (cleared.add(folder)) {
            notices.addAll(Leftovers.clear(folder));
        }
        if (Files.isDirectory(target)) {
            throw new OutputException(target, "is a folder; expected a file name");
        }
        if (named.contains(target)) {
            throw new OutputException(
                    target, "is named for two outputs of one call; choose another name for one of them");
        }
        refuseInput(target);
        if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            if (!overwrite) {
                throw new OutputException(target, "exists already; use --force to replace it, or choose another name");
            }
            refuseForeign(target);
        }
    }

    private void refuseInput(Path target) throws OutputException {
        if (read.contains(target)) {
            throw new OutputException(target, "is one of the files read; choose another name for the output");
        }
    }

    /** Refuses to replace what is no file of ours, or what a person stands for. */
    private void refuseForeign(Path target) throws OutputException {
        if (!Files.isRegularFile(target)) {
            throw new OutputException(
                    target, "is no ordinary file, so --force does not replace it; choose another name");
        }
        if (kept.contains(target)) {
            return;
        }
        boolean ours;
        try {
            ours = OwnFiles.isOurs(target) || !packed.isEmpty() && packed.contains(Hash.of(target));
        } catch (IOException | InputException e) {
            throw new OutputException(target, "cannot be read to see what it is (" + e.getMessage() + ")", e);
        }
        if (!ours) {
            throw new OutputException(
                    target,
                    "was not written by this program, or another has saved it since, so --force does not replace it;"
                            + " choose another name, or move it away");
        }
        if (OwnFiles.isReviewed(target)) {
            throw new OutputException(
                    target,
                    "has been checked or approved, as "
                            + ReviewReport.beside(target).getFileName()
                            + " says, so --force does not replace it; choose another name, or move both away");
        }
    }

    /** Writes one output under a hidden name. */
    void write(Path target, Writing writing) throws OutputException {
        try (OutputStream out = new BufferedOutputStream(open(target), 1 << 16)) {
            writing.to(out);
        } catch (IOException e) {
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    /** Writes one output under a hidden name and says its SHA-256 in hexadecimal. */
    String writeHashed(Path target, Writing writing) throws OutputException {
        MessageDigest digest = Hash.digest();
        write(target, out -> {
            DigestOutputStream counted = new DigestOutputStream(out, digest);
            writing.to(counted);
            counted.flush();
        });
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Opens one output under a hidden name, for a caller that writes it bit by bit. */
    synchronized OutputStream open(Path target) throws OutputException {
        check(target);
        if (over) {
            throw new OutputException(target, "is not written, because the program is ending");
        }
        try {
            Path part = hidden.part(parent(target));
            staged.put(target, part);
            named.add(target);
            return Files.newOutputStream(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    /** Moves everything into place. */
    synchronized void commit() throws OutputException {
        List<Journal.Move> moves = new ArrayList<>();
        Map<Path, Path> aside = new LinkedHashMap<>();
        List<Path> placed = new ArrayList<>();
        Path target = Path.of("");
        try {
            for (Map.Entry<Path, Path> each : staged.entrySet()) {
                target = each.getKey();
                Disk.sync(each.getValue());
                keepOld(target).ifPresent(old -> aside.put(each.getKey(), old));
                moves.add(new Journal.Move(each.getValue(), place(target), Journal.stamp(target)));
            }
            hidden.journal(moves);
            for (Map.Entry<Path, Path> each : staged.entrySet()) {
                target = each.getKey();
                move(each.getValue(), target);
                placed.add(target);
            }
        } catch (IOException e) {
            OutputException failure =
                    new OutputException(target, "cannot be put in place (" + reason(e) + "); is it open elsewhere?", e);
            undo(placed, aside, failure);
            throw failure;
        }
        placed.stream().map(Outputs::parent).distinct().forEach(Disk::syncFolder);
        staged.clear();
        madeFolders.clear();
        for (Path old : aside.values()) {
            delete(old);
        }
    }

    /** The content of what is to be replaced, under a hidden name. */
    private Optional<Path> keepOld(Path target) throws IOException {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        if (!overwrite) {
            throw new FileAlreadyExistsException(target.toString(), null, "it has appeared meanwhile");
        }
        Path old = hidden.old(parent(target));
        Disk.keep(target, old);
        return Optional.of(old);
    }

    private void move(Path part, Path target) throws IOException {
        if (overwrite) {
            Disk.replace(part, target);
        } else {
            Files.move(part, target);
        }
    }

    /** Puts everything back as it was; the journal says so first, in case that is cut off as well. */
    private void undo(List<Path> placed, Map<Path, Path> aside, OutputException failure) {
        try {
            List<Journal.Move> back = new ArrayList<>();
            for (Path target : placed) {
                Path old = aside.get(target);
                if (old != null) {
                    back.add(new Journal.Move(old, place(target), Journal.stamp(target)));
                }
            }
            hidden.journal(back);
        } catch (IOException e) {
            failure.addSuppressed(e);
        }
        for (Path target : placed) {
            Path old = aside.remove(target);
            if (old == null) {
                delete(target);
            } else {
                try {
                    Disk.replace(old, target);
                } catch (IOException e) {
                    failure.addSuppressed(e);
                }
            }
        }
        aside.values().forEach(Outputs::delete);
    }

    /** When the process is told to end: what is being put in place is finished first. */
    private synchronized void interrupted() {
        drop();
    }

    /** Drops what was not put in place. */
    @Override
    public synchronized void close() {
        drop();
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The process is ending, and has dropped everything already.
        }
    }

    private void drop() {
        over = true;
        staged.values().forEach(Outputs::delete);
        staged.clear();
        try {
            hidden.close();
        } catch (IOException e) {
            // What stays of the hidden files is taken away by the next call.
        }
        for (int i = madeFolders.size() - 1; i >= 0; i--) {
            delete(madeFolders.get(i));
        }
        madeFolders.clear();
    }

    private static void delete(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // It is a leftover under a hidden name, which the next call takes away.
        }
    }

    private static Path place(Path target) {
        Path name = target.getFileName();
        return name == null ? target.toAbsolutePath() : parent(target).resolve(name);
    }

    private static Path parent(Path target) {
        Path parent = target.toAbsolutePath().normalize().getParent();
        return parent == null ? target.toAbsolutePath() : parent;
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "access denied";
        }
        if (e instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return String.valueOf(e.getMessage());
    }
}
