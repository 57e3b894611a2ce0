package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.assess.Assessment;
import tallywell.assess.BasisWords;
import tallywell.assess.Check;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.chart.CalibrationPicture;
import tallywell.chart.Images;
import tallywell.chart.StepTraces;
import tallywell.chart.TracePicture;
import tallywell.report.Report;
import tallywell.report.UncertaintyWords;
import tallywell.statement.Words;
import tallywell.workup.Assay;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;
import tallywell.workup.Taken;
import tallywell.workup.WellResult;

/** The pages of one run: the page to hand on, then what it rests on. */
final class SummarySection {
    private static final double NOTE_SIZE = 7.4;

    /** Two of them fit on a page below a heading. */
    private static final double TRACE_WIDTH = 482;

    /** Height of a chart with the words above it. */
    private static final double CHART_ROOM = 370;

    /** More traces than these stand in the workbook only. */
    private static final int MOST_TRACES = 12;

    private final Report report;
    private final Paper paper;
    private final Flow flow;

    /** Where the workbook is named on the first page, once it is there. */
    private final Flow.Later workbook;

    SummarySection(Report report, Paper paper) throws IOException {
        this.report = report;
        this.paper = paper;
        this.flow = new Flow(paper, RunIdentity.of(report));
        paper.bookmark(title(), flow.page());
        head();
        this.workbook = flow.later("Workbook");
        acceptance();
        results();
        new Closing(report, paper, flow).write();
        checks();
        departures();
        calibrations();
        traces();
    }

    private String title() {
        return report.title();
    }

    private void head() throws IOException {
        Assay assay = report.analysis().assay();
        flow.title(title(), 2);
        flow.block("P", assay.method().title(), Face.PLAIN, 9.5, Ink.TEXT, 2);
        flow.space(5);
        flow.facts(
                new Flow.Fact("Operator", assay.operator().isEmpty() ? "not stated" : assay.operator()),
                new Flow.Fact(
                        "Made",
                        report.provenance().madeText() + ", Tallywell "
                                + report.provenance().version()));
        flow.facts(
                new Flow.Fact("Run", report.run() + (assay.plate().isEmpty() ? "" : ", plate " + assay.plate())),
                new Flow.Fact("Layout", assay.layout().name()));
        flow.facts(
                new Flow.Fact(
                        "Readings", assay.readings().stream().map(Taken::name).collect(Collectors.joining(", "))),
                new Flow.Fact("Inputs", RunIdentity.hash(report) + " (short hash of all files read)"));
    }

    /**
     * Names the workbook on the first page.
     *
     * @param text its name and hash
     */
    void nameWorkbook(String text) throws IOException {
        workbook.fill(text, paper.letters());
    }

    private void acceptance() throws IOException {
        Assessment assessment = report.assessment();
        flow.space(5);
        if (!assessment.passed()) {
            flow.band(assessment.sentence(), Ink.BAD, Ink.BEET);
        } else if (assessment.isMostlyAssessed()) {
            flow.band(assessment.sentence(), Ink.GOOD, Ink.SPRUCE);
        } else {
            flow.band(assessment.sentence(), Ink.ATTENTION, Ink.AMBER);
        }
        flow.space(3);
        boolean hasUncertainty =
                assessment.judgements().stream().anyMatch(each -> each.budget().isPresent());
        flow.paragraph(
                "Samples: " + assessment.count(Verdict.REPORT) + " to report, " + assessment.count(Verdict.CHECK)
                        + " to check, " + assessment.count(Verdict.REPEAT)
                        + " to repeat. Values are in the original sample"
                        + (hasUncertainty
                                ? "; " + new BasisWords(assessment).meaning()
                                        + ". It has two digits, values end at its last place."
                                : ", shown with three significant digits; their uncertainty has not been evaluated."),
                NOTE_SIZE,
                Ink.SOFT);
    }

    private void results() throws IOException {
        ResultLines lines = new ResultLines(report);
        BasisWords basis = new BasisWords(report.assessment());
        // Over all tables of the page, where the heads of narrow columns have no room for it.
        flow.heading(basis.scatterOnly() ? "Results (" + basis.head() + ")" : "Results", 40);
        // What was asked for comes before what it follows from.
        table(lines, lines.differences(), "By difference", "What to do next");
        table(lines, lines.of("sample"), "Sample", "What to do next");
        table(lines, lines.of("control"), "Control", "Recovery");
        table(lines, lines.of("spike"), "Spiked sample", "Recovery");
    }

    private void table(ResultLines lines, List<List<Cell>> rows, String name, String last) throws IOException {
        if (!rows.isEmpty()) {
            flow.table(lines.columns(name, last), rows);
            flow.space(5);
        }
    }

    /** The flags of the results in whole sentences. */
    private void remarks() throws IOException {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        for (Judgement each : report.assessment().judgements()) {
            flags.addAll(each.result().flags());
        }
        if (!flags.isEmpty()) {
            flow.paragraph(
                    "Remarks on samples, controls and spikes, in full: " + Words.flags(flags) + ".",
                    NOTE_SIZE,
                    Ink.SOFT);
        }
    }

    private void checks() throws IOException {
        Assessment assessment = report.assessment();
        flow.turn();
        flow.heading("Acceptance", 60);
        flow.paragraph(assessment.sentence(), 8.2, Ink.TEXT);
        remarks();
        String uncertainty = UncertaintyWords.of(assessment.budget());
        if (!uncertainty.isEmpty()) {
            flow.paragraph(uncertainty, NOTE_SIZE, Ink.SOFT);
        }
        flow.space(3);
        flow.table(checkColumns(), assessment.checks().stream().map(this::check).toList());
        if (!assessment.observations().isEmpty()) {
            flow.heading("What the plate shows", 60);
            flow.paragraph("Decides nothing; look where it failed.", NOTE_SIZE, Ink.SOFT);
            flow.space(3);
            flow.table(
                    checkColumns(),
                    assessment.observations().stream().map(this::check).toList());
        }
    }

    private void departures() throws IOException {
        if (report.departures().isEmpty()) {
            return;
        }
        flow.heading("Where the run departs from its plan", 20);
        for (String departure : report.departures()) {
            flow.paragraph(departure, 8.2, Ink.TEXT);
        }
    }

    private static List<Column> checkColumns() {
        return List.of(
                Column.text("Check", 140),
                Column.text("Limit", 82),
                Column.text("Found", 124),
                Column.text("State", 60),
                Column.text("Where the limit comes from", Flow.WIDTH - 140 - 82 - 124 - 60));
    }

    private List<Cell> check(Check check) {
        String state = check.state().words();
        return List.of(
                Cell.of(check.name()),
                Cell.of(check.limit().isEmpty() ? "none" : check.limit()),
                Cell.of(check.found()),
                switch (check.state()) {
                    case PASSED -> Cell.on(Ink.GOOD, Ink.SPRUCE, state);
                    case FAILED -> Cell.on(Ink.BAD, Ink.BEET, state);
                    case NOT_ASSESSED -> Cell.on(Ink.ATTENTION, Ink.AMBER, state);
                },
                Cell.of(check.source()));
    }

    private void calibrations() throws IOException {
        boolean drawn = Images.obstacle().isEmpty();
        boolean isShown =
                drawn && report.analysis().steps().get(0).calibration().isPresent();
        flow.heading("Calibration", isShown ? CHART_ROOM : 40);
        for (StepAnalysis step : report.analysis().steps()) {
            boolean shown = drawn && step.calibration().isPresent();
            flow.need(shown ? CHART_ROOM : 40);
            if (report.analysis().steps().size() > 1) {
                flow.block("H3", step.step().analyte().name(), Face.BOLD, 9, Ink.TEXT, 1);
            }
            flow.paragraph(CalibrationWords.of(report.analysis().assay().method(), step), 8.2, Ink.TEXT);
            flow.space(4);
            if (shown) {
                flow.figure(
                        Drawing.of(
                                new CalibrationPicture(
                                        step, step.step().analyte().name()),
                                paper),
                        Flow.WIDTH,
                        CalibrationWords.drawing(step));
                flow.space(6);
            }
        }
    }

    private void traces() throws IOException {
        List<StepTraces> steps = new ArrayList<>();
        for (StepAnalysis step : report.analysis().steps()) {
            StepTraces traces = new StepTraces(
                    report.analysis(),
                    report.assessment(),
                    step.number(),
                    step.step().analyte().name(),
                    step.step().signal().wavelengthNm());
            if (traces.hasTraces()) {
                steps.add(traces);
            }
        }
        if (steps.isEmpty()) {
            return;
        }
        int flagged = steps.stream().mapToInt(step -> step.flagged().size()).sum();
        flow.heading("Flagged traces", flagged == 0 ? 20 : 370);
        var obstacle = Images.obstacle();
        if (obstacle.isPresent()) {
            flow.paragraph("No picture can be drawn: " + obstacle.get(), NOTE_SIZE, Ink.TEXT);
            return;
        }
        flow.paragraph(
                flagged == 0
                        ? "No trace is flagged."
                        : flagged <= MOST_TRACES
                                ? "Every flagged trace (" + flagged + ")."
                                : "The first " + MOST_TRACES + " of " + flagged
                                        + " flagged traces; the sheet Traces of the workbook has more.",
                NOTE_SIZE,
                Ink.SOFT);
        int left = MOST_TRACES;
        for (StepTraces step : steps) {
            List<WellResult> wells = step.flagged();
            for (WellResult well : wells.subList(0, Math.min(left, wells.size()))) {
                flow.space(4);
                flow.figure(Drawing.of(TracePicture.of(step, well), paper), TRACE_WIDTH, words(step, well));
            }
            left = Math.max(0, left - wells.size());
        }
    }

    private static String words(StepTraces step, WellResult well) {
        return "Trace of well " + well.well() + ", " + step.contentOf(well) + ", " + step.analyte() + ": "
                + Words.flags(StepTraces.flagsOf(well)) + ".";
    }
}
