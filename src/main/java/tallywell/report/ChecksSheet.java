package tallywell.report;

import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tallywell.assess.Assessment;
import tallywell.assess.Check;
import tallywell.assess.Judgement;
import tallywell.assess.Recoveries;
import tallywell.statement.Words;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes the sheet Checks: the criteria for the batch, the verdict on each result with its reasons, the flags in words. */
final class ChecksSheet {
    static final String NAME = "Checks";

    private static final Look WRAPPED = Looks.WRAPPED.edge(Look.Edge.UNDER);
    private static final Look TOP = Look.PLAIN.align(Look.Align.TOP).edge(Look.Edge.UNDER);
    private static final int LINE_PT = 13;

    /** Of a landscape page, and of what stands above the table of recoveries beside the checks, with its own heads. */
    private static final int LINES_OF_PAGE = 33;

    private static final int LINES_OF_HEAD = 10;

    private final Draft draft;
    private final Report report;
    private final Sheet sheet;
    private int row;

    private ChecksSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.report = draft.report();
        this.sheet = sheet;
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new ChecksSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        Assessment assessment = report.assessment();
        sheet.row(row++, 26);
        sheet.text(0, "Checks", Looks.TITLE);
        sheet.row(row++);
        sheet.text(0, assessment.sentence(), assessment.passed() ? Looks.TEXT : Look.PLAIN.face(Look.Face.BAD));
        row++;
        checks("The batch", assessment.checks());
        row++;
        controls();
        checks("What the plate shows (decides nothing; look where it failed)", assessment.observations());
        row++;
        judgements(assessment.judgements());
        row++;
        departures(report.departures());
        flags();
        sheet.widths(38, 24, 30, 14, 42);
        sheet.print(true, false, 0, report.run());
    }

    private void head(String... titles) throws IOException {
        sheet.row(row++);
        sheet.heads(0, List.of(titles), Looks.HEAD);
    }

    private void section(String title) throws IOException {
        sheet.row(row++, 20);
        sheet.text(0, title, Looks.SECTION);
    }

    private void checks(String title, List<Check> checks) throws IOException {
        section(title);
        head("Check", "Limit", "Found", "State", "Where the limit comes from");
        for (Check check : checks) {
            sheet.row(row++, LINE_PT * lines(check));
            sheet.text(0, check.name(), WRAPPED);
            sheet.text(1, check.limit().isEmpty() ? "none" : check.limit(), WRAPPED);
            sheet.text(2, check.found(), WRAPPED);
            sheet.text(3, check.state().words(), look(check.state()));
            sheet.text(4, check.source(), WRAPPED);
        }
    }

    private static int lines(Check check) {
        return Math.max(lines(check.name(), 38, check.source(), 42), lines(check.limit(), 24, check.found(), 30));
    }

    private static int lines(List<Check> checks) {
        return checks.stream().mapToInt(ChecksSheet::lines).sum();
    }

    /** How a state is coloured, beside its words. */
    static Look plain(Check.State state) {
        return look(state).align(Look.Align.AUTO).edge(Look.Edge.NONE);
    }

    private static Look look(Check.State state) {
        return switch (state) {
            case PASSED -> TOP.face(Look.Face.GOOD).fill(Look.Fill.GOOD);
            case FAILED -> TOP.face(Look.Face.BAD).fill(Look.Fill.BAD);
            case NOT_ASSESSED -> TOP.face(Look.Face.ATTENTION);
        };
    }

    /** The recoveries between their limits, as a table and as a chart of it. */
    private void controls() throws IOException {
        List<Judgement> controls = report.assessment().judgements().stream()
                .filter(each -> each.result().recoveryPercent().isPresent())
                .toList();
        if (controls.isEmpty()) {
            return;
        }
        // Table and chart stay on one page.
        int lines = LINES_OF_HEAD + lines(report.assessment().checks()) + controls.size() + ControlsChart.ROWS;
        if (lines > LINES_OF_PAGE) {
            sheet.breakAfter(row - 1);
        }
        section("Recoveries between their limits");
        sheet.row(row++);
        sheet.text(0, "Control or spike", Looks.HEAD);
        sheet.heads(
                1, List.of("Lower limit (%)", "Recovery (%)", "Upper limit (%)"), Looks.HEAD.align(Look.Align.RIGHT));
        sheet.text(4, "Where the limits come from", Looks.HEAD.align(Look.Align.INDENT));
        int first = row;
        String[] names = new String[controls.size()];
        Double[][] values = new Double[3][controls.size()];
        for (int i = 0; i < controls.size(); i++) {
            names[i] = recoveryName(controls.get(i));
            recovery(controls.get(i).result(), names[i], values, i);
        }
        new ControlsChart(names, NAME, first).draw(sheet, values, row + 1);
        row += ControlsChart.ROWS + 1;
    }

    private String recoveryName(Judgement judgement) {
        return name(judgement)
                + (report.analysis().steps().size() > 1
                        ? ", " + judgement.result().analyte()
                        : "");
    }

    private void recovery(Result result, String name, Double[][] values, int index) throws IOException {
        Recoveries.Range range = Recoveries.range(report.analysis(), result);
        Look look = Look.PLAIN.format("0.0");
        sheet.row(row++);
        sheet.text(0, name, Looks.TEXT);
        sheet.number(1, range.least(), look);
        String cell = ResultPlaces.cell(draft.results().row(result), ResultColumns.RECOVERY_PERCENT);
        sheet.formula(2, "IF(" + cell + "=\"\",\"\"," + cell + ")", result.recoveryPercent(), look);
        sheet.number(3, range.most(), look);
        sheet.text(4, range.isOpen() ? "none stated" : range.source(), Looks.NOTE.align(Look.Align.INDENT));
        values[0][index] = range.least().isPresent() ? (Double) range.least().getAsDouble() : null;
        values[1][index] = result.recoveryPercent().getAsDouble();
        values[2][index] = range.most().isPresent() ? (Double) range.most().getAsDouble() : null;
    }

    private void judgements(List<Judgement> judgements) throws IOException {
        section("The results");
        head("Sample or control", "Analyte", "What to do next", "Verdict", "Why");
        for (Judgement judgement : judgements) {
            String why = reasons(judgement, report.assessment().passed());
            String name = name(judgement);
            sheet.row(row++, LINE_PT * lines(name, 38, why, 42));
            sheet.text(0, name, WRAPPED);
            sheet.text(1, judgement.result().analyte(), WRAPPED);
            sheet.text(2, Words.advice(judgement), WRAPPED);
            sheet.text(
                    3,
                    judgement.verdict().word(),
                    ResultsSheet.verdict(judgement.verdict())
                            .align(Look.Align.TOP)
                            .edge(Look.Edge.UNDER));
            sheet.text(4, why, WRAPPED);
        }
    }

    private void departures(List<String> departures) throws IOException {
        if (departures.isEmpty()) {
            return;
        }
        section("Where the run departs from its plan");
        for (String departure : departures) {
            sheet.row(row++, LINE_PT * lines(departure, 140));
            sheet.banner(0, 4, departure, WRAPPED);
        }
        row++;
    }

    private static String name(Judgement judgement) {
        String name = judgement.result().name();
        return judgement.result().role().equals("spike") ? name + ", spiked" : name;
    }

    private static String reasons(Judgement judgement, boolean batchPassed) {
        String flags = Words.flags(judgement.result().flags());
        if (!flags.isEmpty()) {
            return flags;
        }
        return batchPassed ? "nothing to remark" : "the batch fails its acceptance";
    }

    private void flags() throws IOException {
        Set<Flag> used = EnumSet.noneOf(Flag.class);
        report.assessment()
                .judgements()
                .forEach(each -> used.addAll(each.result().flags()));
        for (StepAnalysis step : report.analysis().steps()) {
            for (WellResult well : step.wells()) {
                used.addAll(well.flags());
            }
        }
        if (used.isEmpty()) {
            return;
        }
        section("Flags in words");
        head("Flag", "Meaning");
        for (Flag flag : used) {
            sheet.row(row++);
            sheet.text(0, flag.word(), TOP);
            sheet.text(1, flag.text(), Look.PLAIN);
        }
    }

    /** How many lines two texts take in columns of these widths. */
    static int lines(String one, int width, String other, int otherWidth) {
        return Math.max(lines(one, width), lines(other, otherWidth));
    }

    /** How many lines a text takes in a column of this width; as many as a row can show at most. */
    static int lines(String text, int width) {
        int lines = 0;
        for (String line : text.split("\n", -1)) {
            lines += Math.max(1, (int) Math.ceil(line.length() / (double) width));
        }
        return Math.min(lines, 12);
    }
}
