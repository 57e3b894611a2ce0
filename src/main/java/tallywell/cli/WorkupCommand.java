package tallywell.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import tallywell.task.AdHocRun;
import tallywell.task.Draws;
import tallywell.task.Wanted;
import tallywell.task.WorkUp;

/** {@code tallywell workup}. */
@Command(
        name = "workup",
        mixinStandardHelpOptions = true,
        description = {
            "Works runs up: readings to concentrations to an Excel summary.",
            "Either RUN.yaml files, or --method and --layout with exports: the first FILE is read before the"
                    + " trigger, the rest after it, in order; one series with the trigger inside needs --trigger-at."
        })
final class WorkupCommand implements Callable<Integer> {
    /** Years that every reader of the outputs can show. */
    private static final int FIRST_YEAR = 1900;

    private static final int LAST_YEAR = 9999;

    private final Console console;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Run files, or exports.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--method", paramLabel = "M", description = "Id of a built-in method, or a method file.")
    private @Nullable String method;

    @Option(names = "--layout", paramLabel = "L", description = "Layout file.")
    private @Nullable Path layout;

    @Option(names = "--samples", paramLabel = "S", description = "Sample list.")
    private @Nullable Path samples;

    @Option(
            names = "--trigger-at",
            paramLabel = "T",
            split = ",",
            description = "Moment of the trigger inside the series, such as '225 s'; several for sequential assays.")
    private List<String> triggerAt = new ArrayList<>();

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE.xlsx",
            description = "Where the summary goes. Default: beside the run file, named after it.")
    private @Nullable Path output;

    @Option(names = "--tables", paramLabel = "DIR", description = "Write results.csv and wells.csv there, too.")
    private @Nullable Path tables;

    @Option(
            names = "--pdf",
            paramLabel = "FILE.pdf",
            description = "Write the summary as a PDF document, too; with several runs a section for each.")
    private @Nullable Path pdf;

    @Option(
            names = "--monte-carlo",
            paramLabel = "N",
            description = "Simulate the uncertainties with N draws beside the budgets, at least " + Draws.LEAST + ".")
    private @Nullable Integer trials;

    @Option(
            names = "--seed",
            paramLabel = "S",
            description = "Whole number that the draws follow from; the same one gives the same draws. Default: "
                    + Draws.SEED + ".")
    private @Nullable Long seed;

    @Option(
            names = "--charts",
            paramLabel = "DIR",
            description = {
                "Draw the traces of kinetic runs there, as PNG and SVG: plate-traces (one a step) and trace-WELL for"
                        + " every flagged well; with several runs a folder for each. A run without series has"
                        + " nothing to draw."
            })
    private @Nullable Path charts;

    @Option(
            names = "--time",
            paramLabel = "TIME",
            description = "The time that the outputs carry in place of now, such as 2026-10-02T14:05:00+02:00; the same"
                    + " inputs and time give the same bytes.")
    private @Nullable String time;

    @Option(
            names = "--package",
            paramLabel = "DIR",
            description = {
                "Write a data package for other programs there: tables, results.json, the files read, and"
                        + " datapackage.json. A folder that holds something needs --force; nothing else in it is"
                        + " touched."
            })
    private @Nullable Path dataPackage;

    @Option(names = "--force", description = "Replace existing outputs.")
    private boolean force;

    @Option(names = "--quiet", description = "Say only what is wrong.")
    private boolean quiet;

    @Spec
    private CommandSpec spec;

    WorkupCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws InputException, OutputException {
        // Drawing needs no screen, and on some systems would look for one.
        System.setProperty("java.awt.headless", "true");
        WorkUp.Outcome outcome = new WorkUp().run(request(), LineProgress.on(console, quiet));
        console.notices(outcome.notices());
        if (!quiet) {
            outcome.lines().forEach(console::message);
            outcome.written().forEach(path -> console.message("written: " + path));
        }
        if (outcome.leftOut() > 0) {
            return ExitStatus.INPUT;
        }
        return outcome.failed() > 0 ? ExitStatus.FAILED_ACCEPTANCE : ExitStatus.DONE;
    }

    private WorkUp.Request request() {
        boolean adHoc = method != null || layout != null;
        if (!adHoc && (samples != null || !triggerAt.isEmpty())) {
            throw wrong(
                    "found --samples or --trigger-at with run files; expected them with --method and --layout only");
        }
        if (!adHoc && files.size() > 1 && output == null) {
            throw wrong("found several runs without -o; expected -o ALL.xlsx for their combined summary");
        }
        ZonedDateTime now = now();
        return new WorkUp.Request(
                adHoc ? List.of() : files,
                adHoc ? Optional.of(adHocRun()) : Optional.empty(),
                new Wanted(
                        Optional.ofNullable(output),
                        Optional.ofNullable(tables),
                        Optional.ofNullable(charts),
                        Optional.ofNullable(pdf),
                        Optional.ofNullable(dataPackage),
                        force),
                now.toInstant(),
                now.getZone(),
                draws());
    }

    /** The time that the outputs carry. */
    private ZonedDateTime now() {
        if (time == null) {
            return Instant.now().atZone(ZoneId.systemDefault());
        }
        try {
            OffsetDateTime given = OffsetDateTime.parse(time);
            if (given.getYear() < FIRST_YEAR || given.getYear() > LAST_YEAR) {
                throw wrong("found --time " + time + "; expected a year from " + FIRST_YEAR + " to " + LAST_YEAR);
            }
            return given.toZonedDateTime();
        } catch (DateTimeParseException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "found --time " + time + "; expected a time with its offset from UTC, such as"
                            + " 2026-10-02T14:05:00+02:00 or 2026-10-02T12:05:00Z",
                    e);
        }
    }

    private Optional<Draws> draws() {
        if (trials == null) {
            if (seed != null) {
                throw wrong("found --seed without --monte-carlo; expected both, or --monte-carlo alone");
            }
            return Optional.empty();
        }
        if (!(trials >= Draws.LEAST && trials <= Draws.MOST)) {
            throw wrong("found --monte-carlo " + trials + "; expected a whole number from " + Draws.LEAST + " to "
                    + Draws.MOST);
        }
        return Optional.of(new Draws(trials, seed == null ? Draws.SEED : seed));
    }

    private AdHocRun adHocRun() {
        if (method == null || layout == null) {
            throw wrong("found " + (method == null ? "--layout without --method" : "--method without --layout")
                    + "; expected both");
        }
        try {
            List<Double> times = AdHocRun.times(triggerAt);
            if (files.size() > 1 && !times.isEmpty()) {
                throw wrong("found --trigger-at with several files; expected one series with the trigger inside");
            }
            if (files.size() == 1 && times.isEmpty()) {
                throw wrong(
                        "found one export; expected one before and one after the trigger, or --trigger-at for a series with the trigger inside");
            }
            return new AdHocRun(method, layout, Optional.ofNullable(samples), files, times);
        } catch (IllegalArgumentException e) {
            throw wrong("--trigger-at: " + e.getMessage());
        }
    }

    private ParameterException wrong(String text) {
        return new ParameterException(spec.commandLine(), text);
    }
}
