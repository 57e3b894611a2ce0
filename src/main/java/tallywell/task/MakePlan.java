package tallywell.task;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.assess.Assessor;
import tallywell.assess.Repeats;
import tallywell.files.PlanFile;
import tallywell.files.RunReader;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.paper.BenchDocument;
import tallywell.plan.Plan;
import tallywell.plan.Planner;
import tallywell.report.BenchSheet;
import tallywell.report.PlannedSamples;
import tallywell.workup.Assay;
import tallywell.workup.Workup;

/**
 * Plans a run, or what a finished run leaves to be repeated: a sheet for the bench, a plan file to compare the run with,
 * and the sample list as planned.
 */
public final class MakePlan {
    private final RunLoader loader = new RunLoader();

    /**
     * What to plan.
     *
     * @param run run file; its readings may be absent
     * @param output where the bench sheet goes; without it beside the run, named after it
     * @param plan where the plan file goes; without it beside the run, named after it
     * @param samples where the sample list as planned goes, if wanted
     * @param overwrite whether existing files may be replaced
     * @param made the time that the sheet carries
     * @param zone its zone
     * @param pdf where the bench sheet goes as a document, if wanted
     * @param repeats whether the run is done, and what it leaves to be repeated is planned: the sample list as planned is
     *     always written then, and files that stand beside the run have that in their names
     */
    public record Request(
            Path run,
            Optional<Path> output,
            Optional<Path> plan,
            Optional<Path> samples,
            boolean overwrite,
            Instant made,
            ZoneId zone,
            Optional<Path> pdf,
            boolean repeats) {
        /** A request without a document, for a run to come. */
        public Request(
                Path run,
                Optional<Path> output,
                Optional<Path> plan,
                Optional<Path> samples,
                boolean overwrite,
                Instant made,
                ZoneId zone) {
            this(run, output, plan, samples, overwrite, made, zone, Optional.empty(), false);
        }
    }

    /**
     * What came of it.
     *
     * @param line the plan in one sentence
     * @param notices what the user should be told
     * @param written the files that were written
     */
    public record Outcome(String line, List<Notice> notices, List<Path> written) {}

    /** Plans a run, to be looked at; nothing is written. */
    public Plan plan(Path run) throws InputException {
        return Planner.plan(loader.wanted(run, new LinkedHashMap<>()));
    }

    /**
     * Plans and writes.
     *
     * @throws InputException if the run cannot be planned; nothing is written
     * @throws OutputException if an output cannot be written; nothing is written
     */
    public Outcome run(Request request) throws InputException, OutputException {
        Map<Path, String> files = new LinkedHashMap<>();
        Planner.Wanted wanted = request.repeats() ? repeats(request.run(), files) : loader.wanted(request.run(), files);
        Plan plan = Planner.plan(wanted);
        String which = request.repeats() ? "-repeats" : "";
        Path sheet = request.output().orElseGet(() -> beside(request.run(), which + "-bench.xlsx"));
        Path file = request.plan().orElseGet(() -> beside(request.run(), which + "-plan.yaml"));
        Optional<Path> list = request.samples()
                .or(() -> request.repeats() ? Optional.of(beside(request.run(), "-repeats.csv")) : Optional.empty());
        List<Path> written = new ArrayList<>(List.of(sheet, file));
        try (Outputs outputs = new Outputs(request.overwrite(), files.keySet())) {
            outputs.write(
                    sheet,
                    out -> new BenchSheet()
                            .write(plan, wanted.name(), request.made(), request.zone(), Version.text(), out));
            outputs.write(
                    file, out -> out.write(new PlanFile().text(plan.record()).getBytes(StandardCharsets.UTF_8)));
            if (request.pdf().isPresent()) {
                outputs.write(
                        request.pdf().get(),
                        out -> new BenchDocument()
                                .write(plan, wanted.name(), request.made(), request.zone(), Version.text(), out));
                written.add(request.pdf().get());
            }
            if (list.isPresent()) {
                outputs.write(list.get(), out -> samples(plan, new OutputStreamWriter(out, StandardCharsets.UTF_8)));
                written.add(list.get());
            }
            outputs.commit();
        }
        return new Outcome(line(wanted.name(), plan), plan.notices(), written);
    }

    /** The run worked up, for what it leaves to be repeated. */
    private Planner.Wanted repeats(Path runFile, Map<Path, String> files) throws InputException {
        RunLoader.Loaded loaded = loader.load(runFile);
        files.putAll(loaded.files());
        Assay assay = loaded.assay();
        SampleList repeats = Repeats.of(new Assessor().assess(new Workup().analyse(assay)));
        if (repeats.bySlot().isEmpty()) {
            throw new InputException(
                    new Place.InFile(assay.name(), ""),
                    "found no result with the verdict 'repeat', so there is nothing to plan; expected at least one");
        }
        return new Planner.Wanted(
                assay.name(),
                assay.title().isEmpty() ? "" : assay.title() + ", repeats",
                assay.operator(),
                assay.method(),
                assay.layout(),
                repeats.bySlot().values().stream().map(WantedSample::planned).toList(),
                List.of(),
                new RunReader().read(runFile).planning());
    }

    private static void samples(Plan plan, Writer out) throws IOException {
        BufferedWriter writer = new BufferedWriter(out);
        new PlannedSamples().write(plan, writer);
        writer.flush();
    }

    private static String line(String name, Plan plan) {
        long diluted = plan.samples().stream()
                .filter(each -> !each.scheme().steps().isEmpty())
                .count();
        int samples = plan.samples().size();
        return name + ": " + samples + (samples == 1 ? " sample in " : " samples in ") + plan.wells()
                + " wells with standards, controls and blanks; " + diluted + " to be diluted";
    }

    /** A file beside the run, named after it. */
    public static Path beside(Path run, String ending) {
        String file = String.valueOf(run.getFileName());
        return run.resolveSibling(file.replaceFirst("[.][^.]*$", "") + ending);
    }
}
