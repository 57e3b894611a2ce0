package tallywell.task;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import tallywell.notice.OutputException;

/**
 * The files that one call writes: each is written under another name beside its place, and all are renamed into place
 * together when complete. Where anything fails, nothing new is left behind and what was there stays as it was.
 */
final class Outputs implements Closeable {
    private final boolean overwrite;
    private final Collection<Path> protectedFiles;
    private final Map<Path, Path> staged = new LinkedHashMap<>();
    private final List<Path> madeFolders = new ArrayList<>();

    /**
     * Starts a set of outputs.
     *
     * @param overwrite whether an existing file may be replaced
     * @param inputs files that are never replaced
     */
    Outputs(boolean overwrite, Collection<Path> inputs) {
        this.overwrite = overwrite;
        this.protectedFiles = inputs.stream().map(Outputs::real).toList();
    }

    /** Writes a file; it reaches its place by {@link #commit()}. */
    interface Writing {
        void to(OutputStream out) throws IOException;
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
        if (Files.isDirectory(target)) {
            throw new OutputException(target, "is a folder; expected a file name");
        }
        if (staged.keySet().stream().anyMatch(each -> real(each).equals(real(target)))) {
            throw new OutputException(
                    target, "is named for two outputs of one call; choose another name for one of them");
        }
        if (protectedFiles.contains(real(target))) {
            throw new OutputException(target, "is one of the files read; choose another name for the output");
        }
        if (!overwrite && Files.exists(target)) {
            throw new OutputException(target, "exists already; use --force to replace it, or choose another name");
        }
    }

    /** Writes one output under a temporary name. */
    void write(Path target, Writing writing) throws OutputException {
        try (OutputStream out = new BufferedOutputStream(open(target), 1 << 16)) {
            writing.to(out);
        } catch (IOException e) {
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    /** Writes one output under a temporary name and says its SHA-256 in hexadecimal. */
    String writeHashed(Path target, Writing writing) throws OutputException {
        MessageDigest digest = Hash.digest();
        write(target, out -> {
            DigestOutputStream counted = new DigestOutputStream(out, digest);
            writing.to(counted);
            counted.flush();
        });
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Opens one output under a temporary name, for a caller that writes it bit by bit. */
    OutputStream open(Path target) throws OutputException {
        check(target);
        try {
            Path temporary = beside(target, ".part");
            OutputStream out =
                    Files.newOutputStream(temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            temporary.toFile().deleteOnExit();
            staged.put(target, temporary);
            return out;
        } catch (IOException e) {
            throw new OutputException(target, "cannot be written (" + reason(e) + ")", e);
        }
    }

    /** Renames everything into place. */
    void commit() throws OutputException {
        Map<Path, Path> aside = new LinkedHashMap<>();
        List<Path> placed = new ArrayList<>();
        for (Map.Entry<Path, Path> each : staged.entrySet()) {
            Path target = each.getKey();
            try {
                setAside(target).ifPresent(old -> aside.put(target, old));
                Files.move(each.getValue(), target);
                placed.add(target);
            } catch (IOException e) {
                OutputException failure = new OutputException(
                        target, "cannot be put in place (" + reason(e) + "); is it open elsewhere?", e);
                undo(placed, aside, failure);
                throw failure;
            }
        }
        staged.clear();
        madeFolders.clear();
        for (Path old : aside.values()) {
            delete(old);
        }
    }

    private Optional<Path> setAside(Path target) throws IOException {
        if (!Files.exists(target)) {
            return Optional.empty();
        }
        if (!overwrite) {
            throw new FileAlreadyExistsException(target.toString(), null, "it has appeared meanwhile");
        }
        Path old = beside(target, ".old");
        Files.move(target, old);
        return Optional.of(old);
    }

    private static void undo(List<Path> placed, Map<Path, Path> aside, OutputException failure) {
        for (Path target : placed) {
            delete(target);
        }
        aside.forEach((target, old) -> {
            try {
                Files.move(old, target);
            } catch (IOException e) {
                failure.addSuppressed(e);
            }
        });
    }

    /** Drops what was not put in place. */
    @Override
    public void close() {
        staged.values().forEach(Outputs::delete);
        staged.clear();
        for (int i = madeFolders.size() - 1; i >= 0; i--) {
            delete(madeFolders.get(i));
        }
        madeFolders.clear();
    }

    private static void delete(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // It is a leftover under a hidden name; the exit of the process tries once more.
            path.toFile().deleteOnExit();
        }
    }

    private static Path beside(Path target, String ending) {
        return parent(target).resolve(".tallywell-" + UUID.randomUUID() + ending);
    }

    private static Path parent(Path target) {
        Path parent = target.toAbsolutePath().normalize().getParent();
        return parent == null ? target.toAbsolutePath() : parent;
    }

    private static Path real(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            return path.toAbsolutePath().normalize();
        }
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
