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
import tallywell.files.PlanFile;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.paper.BenchDocument;
import tallywell.plan.Plan;
import tallywell.plan.Planner;
import tallywell.report.BenchSheet;
import tallywell.report.PlannedSamples;

/** Plans a run: a sheet for the bench, a plan file to compare the run with, and the sample list as planned. */
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
     */
    public record Request(
            Path run,
            Optional<Path> output,
            Optional<Path> plan,
            Optional<Path> samples,
            boolean overwrite,
            Instant made,
            ZoneId zone,
            Optional<Path> pdf) {
        /** A request without a document. */
        public Request(
                Path run,
                Optional<Path> output,
                Optional<Path> plan,
                Optional<Path> samples,
                boolean overwrite,
                Instant made,
                ZoneId zone) {
            this(run, output, plan, samples, overwrite, made, zone, Optional.empty());
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
        Planner.Wanted wanted = loader.wanted(request.run(), files);
        Plan plan = Planner.plan(wanted);
        Path sheet = request.output().orElseGet(() -> beside(request.run(), "-bench.xlsx"));
        Path file = request.plan().orElseGet(() -> beside(request.run(), "-plan.yaml"));
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
            if (request.samples().isPresent()) {
                outputs.write(
                        request.samples().get(),
                        out -> samples(plan, new OutputStreamWriter(out, StandardCharsets.UTF_8)));
                written.add(request.samples().get());
            }
            outputs.commit();
        }
        return new Outcome(line(wanted.name(), plan), plan.notices(), written);
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
        return name + ": " + plan.samples().size() + " samples in " + plan.wells()
                + " wells with standards, controls and blanks; " + diluted + " to be diluted";
    }

    /** A file beside the run, named after it. */
    public static Path beside(Path run, String ending) {
        String file = String.valueOf(run.getFileName());
        return run.resolveSibling(file.replaceFirst("[.][^.]*$", "") + ending);
    }
}
