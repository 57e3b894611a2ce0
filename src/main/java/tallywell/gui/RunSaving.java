package tallywell.gui;

import java.awt.Desktop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import tallywell.desk.FileNames;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.notice.OutputException;
import tallywell.task.Wanted;

/** Saves a run and writes its summary, beside the windows. */
final class RunSaving {
    private final RunDesk desk;
    private final Host host;
    private final Said said;
    private final RunStore store = new RunStore();
    /** An undone edit takes the run back to before it had a file, which does not unmake the file. */
    private Optional<Path> known;

    private Optional<Exported> exported = Optional.empty();

    private final AtomicBoolean running = new AtomicBoolean();

    RunSaving(RunDesk desk, Host host, Said said) {
        this.desk = desk;
        this.host = host;
        this.said = said;
        known = desk.draft().file();
    }

    /** Saves where the run is, else into a folder of its own, then goes on. */
    void save(Runnable then) {
        save(Text.of("run.folder"), Text.of("run.folder.is"), then);
    }

    private void save(String title, String about, Runnable then) {
        RunDraft draft = desk.draft();
        if (draft.method().isEmpty() || draft.layout().isEmpty()) {
            said.hint(Text.of("run.incomplete") + " " + ResultsCard.needs(draft));
            return;
        }
        Optional<Path> file = draft.file().or(() -> known);
        if (file.isPresent()) {
            keep(draft, () -> store.save(draft, file.get()), then);
            return;
        }
        host.askFolder(title, about, Path.of("runs", folderName(draft)))
                .ifPresent(folder -> keep(draft, () -> store.saveInFolder(draft, folder), then));
    }

    /** What was exported last, and what was said of it. */
    private record Exported(RunDraft draft, Path file, String words) {}

    /** Writes a run. */
    private interface Saving {
        RunDraft saved() throws OutputException;
    }

    private void keep(RunDraft draft, Saving saving, Runnable then) {
        if (!running.compareAndSet(false, true)) {
            return;
        }
        host.jobs()
                .run(
                        said,
                        Text.of("run.saving"),
                        Jobs.Cancel.NEVER,
                        progress -> {
                            try {
                                return saving.saved();
                            } finally {
                                running.set(false);
                            }
                        },
                        saved -> {
                            known = saved.file();
                            desk.history().saved(draft, saved);
                            saved.file().ifPresent(host::savedRun);
                            then.run();
                        },
                        e -> said.offer(
                                OutputWords.of(e),
                                List.of(
                                        new Said.Offer(Text.of("again"), () -> save(then)),
                                        new Said.Offer(Text.of("run.elsewhere"), () -> elsewhere(then)))));
    }

    private void elsewhere(Runnable then) {
        RunDraft draft = desk.draft();
        host.askFolder(Text.of("run.folder"), Text.of("run.folder.is"), Path.of("runs", folderName(draft)))
                .ifPresent(folder -> keep(draft, () -> store.saveInFolder(draft, folder), then));
    }

    private static String folderName(RunDraft draft) {
        String name = FileNames.of(
                draft.title().isEmpty()
                        ? draft.method().map(each -> each.value().id()).orElse("run")
                        : draft.title());
        return name.isEmpty() ? "run" : name;
    }

    /** Saves, then writes the summary beside the run, as a workbook and as pages to sign, the tables and the pictures. */
    void export() {
        if (!desk.draft().isComplete()) {
            said.hint(Text.of("run.incomplete.export") + " " + ResultsCard.needs(desk.draft()));
            return;
        }
        save(
                Text.of("run.folder.export"),
                Text.of("run.folder.is") + " " + Text.of("run.folder.export.is"),
                () -> export(file().orElseThrow(), ""));
    }

    private static String plain(Path file) {
        return String.valueOf(file.getFileName()).replaceFirst("[.][^.]*$", "");
    }

    private static Path summary(Path run, String ending) {
        return run.resolveSibling(plain(run) + ending + ".xlsx");
    }

    private void export(Path run, String ending) {
        RunDraft draft = desk.draft();
        Path summary = summary(run, ending);
        Wanted wanted = new Wanted(
                Optional.of(summary),
                Optional.of(run.resolveSibling("tables" + ending)),
                Optional.of(run.resolveSibling("charts" + ending)),
                Optional.of(run.resolveSibling(plain(run) + ending + ".pdf")),
                Optional.empty(),
                true);
        host.jobs()
                .run(
                        said,
                        Text.of("export.busy"),
                        Jobs.Cancel.ASKS,
                        progress -> store.export(run, wanted, Instant.now(), ZoneId.systemDefault(), progress),
                        written -> exported(written, summary, draft),
                        e -> said.offer(
                                OutputWords.of(e),
                                List.of(
                                        new Said.Offer(Text.of("again"), () -> export(run, ending)),
                                        new Said.Offer(Text.of("export.other"), () -> exportUnderAnotherName(run)))));
    }

    private void exported(List<Path> written, Path summary, RunDraft draft) {
        if (written.isEmpty()) {
            said.hint(Text.of("job.cancelled", Text.of("run.export")));
            return;
        }
        Path file = Objects.requireNonNull(summary.getFileName());
        exported = Optional.of(new Exported(draft, file, done(written, file, summary)));
        said.done(exported.get().words(), List.of(new Said.Offer(Text.of("export.open"), () -> openFolder(summary))));
    }

    private static String done(List<Path> written, Path file, Path summary) {
        long tables = written.stream()
                .filter(each -> each.toString().endsWith(".csv"))
                .count();
        long pictures = written.stream()
                .filter(each ->
                        each.toString().endsWith(".png") || each.toString().endsWith(".svg"))
                .count();
        return Text.of(
                pictures == 0 ? "export.done" : "export.done.pictures",
                file,
                plain(file) + ".pdf",
                tables,
                pictures,
                String.valueOf(summary.toAbsolutePath().getParent()));
    }

    /** Whether what was exported is not what is seen now. */
    boolean isSummaryOlder() {
        return exported.isPresent() && !exported.get().draft().equals(desk.draft());
    }

    /** Takes back that all is written, once something has changed since. */
    void refresh() {
        if (isSummaryOlder() && said.words().equals(exported.orElseThrow().words())) {
            said.offer(Text.of("export.older", exported.orElseThrow().file()), Text.of("export.again"), this::export);
        }
    }

    private void exportUnderAnotherName(Path run) {
        host.jobs().run(said, Text.of("export.busy"), progress -> free(run), ending -> export(run, ending));
    }

    /** The first ending under which no summary stands yet. */
    private static String free(Path run) {
        for (int i = 2; ; i++) {
            if (!Files.exists(summary(run, "-" + i))) {
                return "-" + i;
            }
        }
    }

    /** The run file, once there is one. */
    Optional<Path> file() {
        return desk.draft().file().or(() -> known);
    }

    private void openFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        boolean can = Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.OPEN);
        if (!can || folder == null) {
            said.hint(Text.of("export.where", String.valueOf(folder)));
            return;
        }
        host.back().execute(() -> {
            try {
                Desktop.getDesktop().open(folder.toFile());
            } catch (IOException e) {
                host.front().execute(() -> said.hint(Text.of("export.where", folder.toString())));
            }
        });
    }
}
