package tallywell.task;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import tallywell.exchange.DataPackage;
import tallywell.files.MethodLibrary;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.report.Provenance;
import tallywell.report.Report;

/** A data package on its way into a folder. */
final class PackageFolder implements AutoCloseable {
    private final Outputs outputs;
    private final Path folder;
    private final PackedInputs inputs = new PackedInputs();
    private final Map<String, String> builtIn = new LinkedHashMap<>();
    private final DataPackage data;

    /**
     * Starts a package.
     *
     * @param folder where it goes; one that holds something is only used where files may be replaced, and what else is
     *     in it stays
     * @param made by what and when
     */
    PackageFolder(Outputs outputs, Path folder, boolean overwrite, Provenance made) throws OutputException {
        this.outputs = outputs;
        this.folder = folder;
        if (!overwrite && holdsSomething(folder)) {
            throw new OutputException(
                    folder, "the folder is not empty; use --force to write into it all the same, or choose another");
        }
        outputs.folder(folder);
        try {
            outputs.knows(OwnFiles.packed(folder));
            data = new DataPackage(this::open, made);
        } catch (IOException e) {
            throw failed(e);
        }
    }

    private static boolean holdsSomething(Path folder) throws OutputException {
        if (!Files.isDirectory(folder)) {
            return false;
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isPresent();
        } catch (IOException e) {
            throw new OutputException(folder, "the folder cannot be read (" + e.getMessage() + ")", e);
        }
    }

    private OutputStream open(String path) throws OutputException {
        Path target = folder.resolve(path);
        Path parent = target.getParent();
        if (parent != null) {
            outputs.folder(parent);
        }
        return outputs.open(target);
    }

    /** Adds a run with the files that it was worked up from. */
    void add(RunLoader.Loaded loaded, Report report) throws OutputException {
        Map<String, String> hashes = new HashMap<>();
        report.provenance().inputs().forEach(each -> hashes.put(each.name(), each.sha256()));
        loaded.files().forEach((path, role) -> inputs.add(path, role, hashes.getOrDefault(path.toString(), "")));
        if (!loaded.files().containsValue("method")) {
            String id = loaded.assay().method().id();
            new MethodLibrary().file(id).ifPresent(text -> builtIn.put(id, text));
        }
        try {
            data.add(report);
        } catch (IOException e) {
            throw failed(e);
        }
    }

    /** Ends the package. */
    void finish() throws InputException, OutputException {
        try {
            for (Map.Entry<String, PackedInputs.File> each : inputs.placed().entrySet()) {
                copy(each.getKey(), each.getValue());
            }
            for (Map.Entry<String, String> each : builtIn.entrySet()) {
                data.file(
                        "methods/" + each.getKey() + ".yaml",
                        "built-in method '" + each.getKey() + "' as it stands in this version",
                        each.getValue().getBytes(StandardCharsets.UTF_8));
            }
            data.finish();
        } catch (IOException e) {
            throw failed(e);
        }
    }

    private void copy(String path, PackedInputs.File file) throws InputException, IOException, OutputException {
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(file.path());
        } catch (IOException e) {
            throw new InputException(Place.file(file.path()), "the file cannot be read (" + e.getMessage() + ")", e);
        }
        String hash = data.file(path, String.join(", ", file.roles()) + ", as it was read", bytes);
        if (!hash.equals(file.sha256())) {
            throw new InputException(
                    Place.file(file.path()),
                    "the file changed while it was worked up; let whatever writes it finish, then try again");
        }
    }

    private OutputException failed(IOException e) {
        return new OutputException(folder, "the package cannot be written (" + e.getMessage() + ")", e);
    }

    @Override
    public void close() throws OutputException {
        try {
            data.close();
        } catch (IOException e) {
            throw failed(e);
        }
    }
}
