package tallywell.report;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.method.CalibrationRule;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Means;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;

/** Writes the sheet Calibration: for each step the means of its blanks, what it is worked up with, and its points. */
final class CalibrationSheet {
    private static final List<String> MEANS =
            List.of("Mean of", "Number", "Wells used", "Mean ΔA", "SD of ΔA", "Wells, all", "Mean ΔA, all");
    private static final List<String> POINTS = List.of(
            "Well", "Level (g/L)", "Net ΔA", "Used", "Weight", "Fitted net ΔA", "Residual", "Back (g/L)", "Found (%)");
    private static final List<String> POINTS_WORKING = List.of(
            "net ΔA that counts",
            "level that counts",
            "net ΔA, all",
            "weight, all",
            "net ΔA that counts, all",
            "level that counts, all");
    private static final Look NUMBER = Look.PLAIN.format(Looks.ABSORBANCE);
    private static final Look WORKING = Looks.NOTE.format("General");

    private final Draft draft;
    private final Sheet sheet;

    private CalibrationSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new CalibrationSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(0);
        sheet.text(0, "Calibration", Looks.TITLE);
        sheet.row(1);
        sheet.text(
                0,
                "How net ΔA becomes a concentration. Columns named \"all\" put excluded wells back; they lead to value_all.",
                Looks.NOTE);
        int last = 0;
        for (StepAnalysis step : draft.analysis().steps()) {
            Part part = new Part(step);
            part.write();
            last = part.section.end();
        }
        sheet.widths(40, 12, 12, 12, 12, 13, 12, 12, 12, 17, 15, 11, 11, 21, 18);
        sheet.print(
                false, draft.analysis().steps().size() == 1, 0, draft.report().run());
        sheet.printArea(last, POINTS.size() - 1);
    }

    /** The mean ΔA over the wells of a group that can be read. */
    static OptionalDouble mean(Means means, boolean usedOnly) {
        return means.wells().stream()
                .filter(well -> (well.used() || !usedOnly) && well.deltaA().isPresent())
                .mapToDouble(well -> well.deltaA().orElseThrow())
                .average();
    }

    /** The part of one step. */
    private final class Part {
        private final StepAnalysis step;
        private final Section section;
        private final FactValues used;
        private final Optional<FactValues> all;

        Part(StepAnalysis step) {
            this.step = step;
            this.section = draft.calibration().of(step.number());
            this.used = new FactValues(draft.analysis(), step);
            this.all = draft.whole()
                    .map(whole -> new FactValues(whole, whole.steps().get(step.number() - 1)));
        }

        void write() throws IOException {
            sheet.row(section.top());
            sheet.text(0, title(), Looks.SECTION);
            means();
            facts();
            if (step.calibration().isPresent()) {
                points(step.calibration().get());
                CalibrationChart.draw(draft, sheet, step, section);
            }
        }

        private String title() {
            CalibrationRule rule = step.step().calibration();
            String by = rule instanceof CalibrationRule.ByStandards standards
                    ? "by standards, " + standards.model().word().replace('-', ' ') + ", weights "
                            + standards.weights().word()
                    : rule instanceof CalibrationRule.BySingleStandard ? "by single standard" : "by absorptivity";
            return step.step().analyte().name() + ": " + by;
        }

        private void means() throws IOException {
            sheet.row(section.meansHead());
            sheet.text(0, MEANS.get(0), Looks.HEAD);
            sheet.heads(1, MEANS.subList(1, 5), Looks.HEAD.align(Look.Align.RIGHT));
            sheet.heads(5, MEANS.subList(5, 7), Looks.HEAD_WORKING.align(Look.Align.RIGHT));
            for (Means means : section.means()) {
                sheet.row(means.row());
                mean(means);
            }
        }

        private void mean(Means means) {
            WellPlaces wells = draft.wells();
            String set = wells.all(WellPlaces.Working.SET) + "," + means.number();
            String delta = wells.all(WellColumns.DELTA_A);
            String yes = wells.all(WellColumns.USED) + ",\"yes\"";
            String number = delta + ",\">-1E+300\"";
            sheet.text(0, means.what(), Looks.TEXT);
            sheet.number(1, means.number(), Looks.TEXT);
            String count = At.cell(means.row(), 2);
            sheet.formula(2, "COUNTIFS(" + set + "," + yes + "," + number + ")", count(means, true), Looks.TEXT);
            OptionalDouble mean = CalibrationSheet.mean(means, true);
            sheet.formula(
                    3, "IF(" + count + "=0,\"\",AVERAGEIFS(" + delta + "," + set + "," + yes + "))", mean, NUMBER);
            sheet.formula(
                    4,
                    "IF(" + count + "<2,\"\",SQRT(SUMIFS(" + wells.all(WellPlaces.Working.SQUARE) + "," + set + ")/("
                            + count + "-1)))",
                    deviation(means, mean),
                    Look.PLAIN.format(Looks.CREEP));
            String countAll = At.cell(means.row(), 5);
            sheet.formula(5, "COUNTIFS(" + set + "," + number + ")", count(means, false), WORKING);
            sheet.formula(
                    6,
                    "IF(" + countAll + "=0,\"\",AVERAGEIFS(" + delta + "," + set + "))",
                    CalibrationSheet.mean(means, false),
                    WORKING.format(Looks.ABSORBANCE));
        }

        private int count(Means means, boolean usedOnly) {
            return (int) means.wells().stream()
                    .filter(well -> (well.used() || !usedOnly) && well.deltaA().isPresent())
                    .count();
        }

        private OptionalDouble deviation(Means means, OptionalDouble mean) {
            int n = count(means, true);
            if (n < 2) {
                return OptionalDouble.empty();
            }
            double squares = means.wells().stream()
                    .filter(well -> well.used() && well.deltaA().isPresent())
                    .mapToDouble(well -> Math.pow(well.deltaA().orElseThrow() - mean.orElseThrow(), 2))
                    .sum();
            return OptionalDouble.of(Math.sqrt(squares / (n - 1)));
        }

        private void facts() throws IOException {
            sheet.row(section.factsHead());
            boolean fitted = step.calibration().isPresent();
            sheet.text(0, "Worked up with", Looks.HEAD);
            sheet.text(1, "Value", Looks.head(true, false));
            sheet.text(2, "Unit", Looks.head(false, true));
            if (fitted) {
                sheet.text(3, "Value, all", Looks.HEAD_WORKING.align(Look.Align.RIGHT));
            }
            for (Fact fact : section.facts()) {
                sheet.row(section.row(fact));
                sheet.text(0, label(fact), Looks.TEXT);
                fact(fact, Scope.USED, Optional.of(used));
                sheet.text(2, fact.unit(), Looks.NOTE.align(Look.Align.INDENT));
                if (fitted && fact.compareTo(Fact.POINTS) >= 0 && draft.whole().isPresent()) {
                    fact(fact, Scope.ALL, all);
                }
            }
        }

        /** A measured path stands with each well; the one here is the length that every ΔA is stated for. */
        private String label(Fact fact) {
            return fact == Fact.PATH && draft.analysis().assay().path().isPresent()
                    ? fact.label() + ", that every ΔA is stated for"
                    : fact.label();
        }

        private void fact(Fact fact, Scope scope, Optional<FactValues> values) {
            OptionalDouble value = values.isPresent() ? values.get().of(fact) : OptionalDouble.empty();
            Look look = scope == Scope.ALL ? Looks.NOTE : Looks.TEXT;
            look = look.format(isAsTyped(fact) || value.isEmpty() ? "General" : Looks.digits(value.getAsDouble(), 6));
            Optional<String> formula = new FactFormulas(draft, step, scope).of(fact);
            if (formula.isPresent()) {
                sheet.formula(scope.fact, formula.get(), value, look);
            } else if (value.isPresent()) {
                boolean input = fact.compareTo(Fact.POINTS) < 0;
                sheet.number(
                        scope.fact, value.getAsDouble(), input ? Looks.INPUT : Looks.COMPUTED.format(look.format()));
            }
        }

        private static boolean isAsTyped(Fact fact) {
            return fact == Fact.POINTS || fact == Fact.LOWEST || fact == Fact.HIGHEST;
        }

        private void points(Calibration calibration) throws IOException {
            sheet.row(section.pointsHead());
            for (int column = 0; column < POINTS.size(); column++) {
                Look look = column == 3 ? Looks.HEAD.align(Look.Align.CENTRE) : Looks.head(column > 0, false);
                sheet.text(column, POINTS.get(column), look);
            }
            sheet.heads(POINTS.size(), POINTS_WORKING, Looks.HEAD_WORKING.align(Look.Align.RIGHT));
            for (int i = 0; i < section.points().size(); i++) {
                sheet.row(section.firstPoint() + i);
                new PointRow(draft, sheet, step, section, calibration)
                        .write(section.points().get(i));
            }
        }
    }
}
