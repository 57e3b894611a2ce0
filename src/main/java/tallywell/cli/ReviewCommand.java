package tallywell.cli;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.ReviewReport;

/** {@code tallywell review}. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        description = {
            "Says whether a summary is a draft, checked or approved, and records who checked or approved it.",
            "The record stands in REPORT.review.yaml beside the summary and holds for exactly these bytes: a changed"
                    + " summary is a draft again. To approve, another person must have checked it before. Both are"
                    + " recorded only if 'recheck' finds no difference. This is no electronic signature."
        },
        footer = {"", "Exit status: 3 if the summary has changed since it was checked or approved."})
final class ReviewCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(arity = "1", paramLabel = "REPORT.xlsx", description = "Summary, as 'tallywell workup' wrote it.")
    private Path report = Path.of("");

    @Option(names = "--checked-by", paramLabel = "NAME", description = "Record that NAME has checked it.")
    private @Nullable String checkedBy;

    @Option(names = "--approved-by", paramLabel = "NAME", description = "Record that NAME approves it.")
    private @Nullable String approvedBy;

    @Option(
            names = "--time",
            paramLabel = "TIME",
            description = "When, with offset, such as 2026-03-09T14:05:00+01:00. Default: now.")
    private @Nullable String time;

    @Option(
            names = "--reason",
            paramLabel = "TEXT",
            description = "Why it is checked or approved although a batch fails its acceptance.")
    private @Nullable String reason;

    @Option(
            names = "--against",
            paramLabel = "DIR",
            description = "Folder of the original files, for those that are too large to stand in the summary.")
    private @Nullable Path against;

    @Spec
    private CommandSpec spec;

    ReviewCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException {
        // The summary is worked up again before anything is recorded, which needs no screen.
        System.setProperty("java.awt.headless", "true");
        ReviewReport.Outcome outcome = new ReviewReport().run(request());
        console.notices(outcome.notices());
        outcome.lines().forEach(console.out()::println);
        outcome.written().ifPresent(path -> console.message("written: " + path));
        return outcome.changed() ? ExitStatus.FAILED_ACCEPTANCE : ExitStatus.DONE;
    }

    private ReviewReport.Request request() {
        Instant now = time();
        ZoneId zone = ZoneId.systemDefault();
        if (checkedBy != null && approvedBy != null) {
            throw wrong(
                    "found --checked-by and --approved-by in one call; expected one, since two people take the steps");
        }
        if (checkedBy != null) {
            return with(ReviewReport.checked(report, checkedBy, now, zone));
        }
        if (approvedBy != null) {
            return with(ReviewReport.approved(report, approvedBy, now, zone));
        }
        if (time != null || reason != null || against != null) {
            throw wrong("found " + (time != null ? "--time" : reason != null ? "--reason" : "--against")
                    + " without --checked-by or --approved-by");
        }
        return ReviewReport.state(report, now, zone);
    }

    private ReviewReport.Request with(ReviewReport.Request step) {
        ReviewReport.Request because = reason == null ? step : step.because(reason);
        return against == null ? because : because.against(against);
    }

    private Instant time() {
        if (time == null) {
            return Instant.now();
        }
        try {
            return OffsetDateTime.parse(time).toInstant();
        } catch (DateTimeException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "found --time " + time + "; expected a time with its offset, such as 2026-03-09T14:05:00+01:00",
                    e);
        }
    }

    private ParameterException wrong(String text) {
        return new ParameterException(spec.commandLine(), text);
    }
}
