package tallywell.task;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.assess.Assessment;
import tallywell.assess.Assessor;
import tallywell.budget.SimulatedPlate;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.report.Carried;
import tallywell.report.CarriedFile;
import tallywell.report.InputFile;
import tallywell.report.Provenance;
import tallywell.report.Report;
import tallywell.workup.Analysis;
import tallywell.workup.Workup;

/** Works up what was loaded, and states where it came from. */
final class ReportMaker {
    private final Workup workup = new Workup();
    private final Assessor assessor = new Assessor();

    /**
     * What a report depends on beside its inputs.
     *
     * @param version of the program
     * @param made the time that the report carries
     * @param zone its zone
     * @param draws how to simulate beside the budgets, if wanted
     */
    record Circumstances(String version, Instant made, ZoneId zone, Optional<Draws> draws) {}

    /**
     * The report on a run.
     *
     * @param asked how the run was named, where there is no run file
     */
    Report report(RunLoader.Loaded loaded, List<Carried.Setting> asked, Circumstances circumstances)
            throws InputException {
        Analysis analysis = workup.analyse(loaded.assay());
        Assessment assessment = assessor.assess(analysis);
        List<CarriedFile> files = new ArrayList<>();
        for (ReadFiles.Entry entry : loaded.read().entries()) {
            byte[] bytes = bytes(entry);
            files.add(new CarriedFile(entry.role(), entry.typed(), entry.name(), Hash.of(bytes), bytes));
        }
        Set<InputFile> inputs = new LinkedHashSet<>();
        files.forEach(each -> inputs.add(new InputFile(each.role(), each.name(), each.sha256())));
        Provenance provenance = new Provenance(
                circumstances.version(),
                circumstances.made(),
                circumstances.zone(),
                List.copyOf(inputs),
                circumstances.draws().map(Draws::words).orElse(""),
                Optional.of(new Carried(AskedFor.settings(asked, circumstances), files)));
        return new Report(
                loaded.assay().name(),
                analysis,
                assessment,
                provenance,
                circumstances
                        .draws()
                        .map(draws -> SimulatedPlate.of(assessment.budget(), draws.trials(), draws.seed())),
                loaded.departuresInWords());
    }

    /** Says which inputs are too large to be carried by the summary. */
    static List<Notice> leftOut(Report report) {
        return report.provenance().carried().stream()
                .flatMap(carried -> carried.leftOut().stream())
                .map(name -> Notice.attention(
                        new Place.InFile(name, ""),
                        "too large to be carried by the summary, which keeps its SHA-256 only; 'recheck' needs the file"
                                + " itself, with --against"))
                .toList();
    }

    private static byte[] bytes(ReadFiles.Entry entry) throws InputException {
        return entry.path().isPresent() ? bytes(entry.path().get(), entry.name()) : entry.builtIn();
    }

    /** The bytes of a file that messages call by a name. */
    static byte[] bytes(Path path, String name) throws InputException {
        try {
            return Files.readAllBytes(path);
        } catch (IOException e) {
            throw new InputException(new Place.InFile(name, ""), "the file cannot be read (" + e.getMessage() + ")", e);
        }
    }
}
