package tallywell.report;

import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFDataValidationHelper;
import tallywell.method.Direction;
import tallywell.workup.Assay;
import tallywell.workup.Flag;
import tallywell.workup.Ref;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes the sheet Wells: the columns of {@code wells.csv}, live from the readings on, with the working beside them. */
final class WellsSheet {
    private static final Look NUMBER = Look.PLAIN.format(Looks.ABSORBANCE);
    private static final Look CREEP = Look.PLAIN.format(Looks.CREEP);
    private static final Look WORKING = Looks.NOTE;

    private final Draft draft;
    private final Sheet sheet;
    private final WellPlaces places;

    private WellsSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
        this.places = draft.wells();
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new WellsSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(0);
        for (int column = 0; column < WellColumns.count(); column++) {
            WellColumns each = WellColumns.at(column);
            Look look = Looks.head(each.isNumber(), each.isIndented());
            sheet.text(column, each.title(), each == WellColumns.USED ? look.align(Look.Align.CENTRE) : look);
        }
        sheet.heads(
                WellColumns.count(),
                Arrays.stream(WellPlaces.Working.values())
                        .map(WellPlaces.Working::title)
                        .toList(),
                Looks.HEAD_WORKING);
        for (StepAnalysis step : draft.analysis().steps()) {
            TraceFormulas traces = new TraceFormulas(draft, step);
            for (WellResult well : step.wells()) {
                write(step, well, traces);
            }
        }
        show();
    }

    private void show() {
        sheet.freeze(1, 3);
        int last = WellColumns.count() - 1;
        sheet.poi().setAutoFilter(new CellRangeAddress(0, places.lastRow(), 0, last));
        sheet.widths(
                26, 8, 6, 13, 8, 6, 24, 6, 14, 10, 10, 14, 10, 11, 12, 11, 9, 7, 30, 9, 11, 10, 9, 11, 10, 14, 15, 14,
                11);
        sheet.print(true, false, 1, draft.report().run());
        sheet.printArea(places.lastRow(), last);
        XSSFDataValidationHelper helper = new XSSFDataValidationHelper(sheet.poi());
        int used = WellColumns.USED.column();
        DataValidation choice = helper.createValidation(
                helper.createExplicitListConstraint(new String[] {"yes", "no"}),
                new CellRangeAddressList(1, places.lastRow(), used, used));
        choice.createErrorBox("used", "Write yes or no.");
        choice.setShowErrorBox(true);
        sheet.poi().addValidationData(choice);
    }

    private void write(StepAnalysis step, WellResult well, TraceFormulas traces) throws IOException {
        int row = places.row(step.number(), well.well());
        sheet.row(row);
        Columns columns = new Columns(step, well, traces, row);
        WellColumns.write(draft.report(), step, well, columns);
        new Extra(step, well, row).write();
    }

    private static String blankOr(String condition, String formula) {
        return "IF(" + condition + ",\"\"," + formula + ")";
    }

    /** Writes the columns of {@code wells.csv}, putting a formula where there is one. */
    private final class Columns implements Fields {
        private final StepAnalysis step;
        private final WellResult well;
        private final TraceFormulas traces;
        private final int row;
        private int column = -1;

        Columns(StepAnalysis step, WellResult well, TraceFormulas traces, int row) {
            this.step = step;
            this.well = well;
            this.traces = traces;
            this.row = row;
        }

        @Override
        public void text(String text) {
            Look look =
                    WellColumns.at(++column) == WellColumns.USED ? Looks.INPUT.align(Look.Align.CENTRE) : Looks.TEXT;
            sheet.text(column, text, look);
        }

        @Override
        public void number(double number) {
            value(OptionalDouble.of(number));
        }

        @Override
        public void empty() {
            value(OptionalDouble.empty());
        }

        @Override
        public void number(OptionalDouble number) {
            value(number);
        }

        private void value(OptionalDouble number) {
            WellColumns what = WellColumns.at(++column);
            Look look = look(what, number);
            Optional<String> formula = formula(what);
            if (formula.isPresent()) {
                sheet.formula(column, formula.get(), number, look);
            } else if (number.isPresent()) {
                sheet.number(column, number.getAsDouble(), isInput(what) ? look : computed(look));
            } else {
                sheet.blank(column, look);
            }
        }

        private boolean isInput(WellColumns what) {
            return what == WellColumns.SLOT || what == WellColumns.STEP;
        }

        private Look computed(Look look) {
            return Looks.COMPUTED.format(look.format());
        }

        private Look look(WellColumns what, OptionalDouble number) {
            return switch (what) {
                case SLOT, STEP -> Looks.TEXT;
                case CREEP_PER_MIN, U_DELTA_A -> CREEP;
                case VALUE -> number.isPresent() ? Look.PLAIN.format(Looks.digits(number.getAsDouble(), 5)) : NUMBER;
                default -> NUMBER;
            };
        }

        private Optional<String> formula(WellColumns what) {
            return switch (what) {
                case A_BEFORE -> traces.before(well);
                case A_AFTER -> traces.after(well);
                case CREEP_PER_MIN -> traces.creep(well);
                case DELTA_A -> Optional.of(delta());
                case NET_DELTA_A -> NetFormula.of(draft, step, well, CalibrationPlaces.Scope.USED);
                case PATH_CM -> path();
                case VALUE ->
                    WellColumns.hasValue(well.content()) ? value(WellPlaces.Working.CONCENTRATION) : Optional.empty();
                default -> Optional.empty();
            };
        }

        /** From the cells of the two readings; nothing where the well lacks one or there is no more at the peak. */
        private Optional<String> path() {
            Assay assay = draft.analysis().assay();
            if (assay.path().isEmpty()
                    || !assay.path().get().peak().series().has(well.well())
                    || !assay.path().get().beside().series().has(well.well())) {
                return Optional.empty();
            }
            int entries = assay.readings().size();
            String peak = draft.readings().cell(well.well(), new Ref(entries, 0));
            String beside = draft.readings().cell(well.well(), new Ref(entries + 1, 0));
            CalibrationPlaces.Section section = draft.calibration().of(step.number());
            String water = "(" + section.cell(CalibrationPlaces.Fact.ONE_CM_PEAK, CalibrationPlaces.Scope.USED) + "-"
                    + section.cell(CalibrationPlaces.Fact.ONE_CM_BESIDE, CalibrationPlaces.Scope.USED) + ")";
            return Optional.of("IF(COUNT(" + peak + "," + beside + ")<2,\"\",IF(" + peak + ">" + beside + ",(" + peak
                    + "-" + beside + ")/" + water + ",\"\"))");
        }

        private String delta() {
            CalibrationPlaces.Section section = draft.calibration().of(step.number());
            String before = WellPlaces.own(row, WellColumns.A_BEFORE);
            String after = WellPlaces.own(row, WellColumns.A_AFTER);
            String diluted = section.has(CalibrationPlaces.Fact.TRIGGER_FACTOR)
                    ? before + "*" + section.cell(CalibrationPlaces.Fact.TRIGGER_FACTOR, CalibrationPlaces.Scope.USED)
                    : before;
            boolean rises = step.step().signal().direction() == Direction.RISES;
            String read = rises ? after + "-" + diluted : diluted + "-" + after;
            if (draft.analysis().assay().path().isEmpty()) {
                return blankOr("OR(" + before + "=\"\"," + after + "=\"\")", read);
            }
            String path = WellPlaces.own(row, WellColumns.PATH_CM);
            return blankOr(
                    "OR(" + before + "=\"\"," + after + "=\"\"," + path + "=\"\")",
                    "(" + read + ")*" + section.cell(CalibrationPlaces.Fact.PATH, CalibrationPlaces.Scope.USED) + "/"
                            + path);
        }

        private Optional<String> value(WellPlaces.Working concentration) {
            return valueOf(step, well, row, concentration);
        }
    }

    private Optional<String> valueOf(StepAnalysis step, WellResult well, int row, WellPlaces.Working concentration) {
        String c = WellPlaces.own(row, concentration);
        return draft.results()
                .row(step.number(), well.well())
                .map(result -> blankOr(c + "=\"\"", c + "*" + ResultPlaces.cell(result, ResultPlaces.Working.SCALE)));
    }

    /** The concentration at the volume of the method; a sample's own volume is in the scale of its result. */
    static OptionalDouble plain(StepAnalysis step, WellResult well) {
        OptionalDouble c = well.concentration();
        OptionalDouble own =
                well.trace().sample().isPresent() ? well.trace().sample().get().volumeUl() : OptionalDouble.empty();
        return c.isPresent() && own.isPresent()
                ? OptionalDouble.of(c.getAsDouble()
                        * own.getAsDouble()
                        / step.step().volumes().orElseThrow().sampleUl())
                : c;
    }

    /** Writes the columns of the working. */
    private final class Extra {
        private final StepAnalysis step;
        private final WellResult well;
        private final int row;

        Extra(StepAnalysis step, WellResult well, int row) {
            this.step = step;
            this.well = well;
            this.row = row;
        }

        void write() {
            draft.results().row(step.number(), well.well()).ifPresent(result -> {
                number(WellPlaces.Working.RESULT, result + 1);
                counts();
            });
            CalibrationPlaces.Section section = draft.calibration().of(step.number());
            Optional<CalibrationPlaces.Means> means = section.meansOf(well.well());
            means.ifPresent(each -> number(WellPlaces.Working.SET, each.number()));
            if (WellColumns.hasValue(well.content())) {
                concentration(
                        WellPlaces.Working.CONCENTRATION,
                        CalibrationPlaces.Scope.USED,
                        WellPlaces.own(row, WellColumns.NET_DELTA_A),
                        Optional.of(well));
            }
            means.ifPresent(this::square);
            if (step.number() < draft.analysis().steps().size()) {
                sheet.number(
                        WellPlaces.Working.NEXT_TRIGGER.column(),
                        well.trace().readings().nextTriggerS(),
                        WORKING);
            }
            draft.whole(step, well.well()).ifPresent(this::all);
        }

        private void number(WellPlaces.Working column, int value) {
            sheet.number(column.column(), value, WORKING);
        }

        private void counts() {
            // An over-range well holds more than the reader sees: it counts, and leaves its sample without a value.
            int otherwise = well.flags().contains(Flag.OVER_RANGE) ? 1 : 0;
            sheet.formula(
                    WellPlaces.Working.COUNTS.column(),
                    "IF(ISNUMBER(" + WellPlaces.own(row, WellColumns.DELTA_A) + "),1," + otherwise + ")",
                    well.deltaA().isPresent() ? 1 : otherwise,
                    WORKING);
        }

        private void square(CalibrationPlaces.Means means) {
            String delta = WellPlaces.own(row, WellColumns.DELTA_A);
            String mean = means.cell(CalibrationPlaces.Scope.USED);
            String used = WellPlaces.own(row, WellColumns.USED);
            OptionalDouble average = CalibrationSheet.mean(means, true);
            OptionalDouble value = well.used() && well.deltaA().isPresent() && average.isPresent()
                    ? OptionalDouble.of(Math.pow(well.deltaA().getAsDouble() - average.getAsDouble(), 2))
                    : OptionalDouble.empty();
            sheet.formula(
                    WellPlaces.Working.SQUARE.column(),
                    "IF(AND(" + used + "=\"yes\"," + delta + "<>\"\"),(" + delta + "-" + mean + ")^2,\"\")",
                    value,
                    WORKING.format("0.0E+00"));
        }

        private void concentration(
                WellPlaces.Working column, CalibrationPlaces.Scope scope, String net, Optional<WellResult> value) {
            OptionalDouble cached = value.isPresent() ? plain(step, value.get()) : OptionalDouble.empty();
            sheet.formula(
                    column.column(),
                    ConcentrationFormula.of(draft, step, scope, net),
                    cached,
                    WORKING.format(Looks.CREEP));
        }

        private void all(WellResult same) {
            Optional<String> net = NetFormula.of(draft, step, well, CalibrationPlaces.Scope.ALL);
            net.ifPresent(formula -> sheet.formula(
                    WellPlaces.Working.NET_ALL.column(), formula, same.netDeltaA(), WORKING.format(Looks.ABSORBANCE)));
            if (!WellColumns.hasValue(well.content())) {
                return;
            }
            concentration(
                    WellPlaces.Working.CONCENTRATION_ALL,
                    CalibrationPlaces.Scope.ALL,
                    WellPlaces.own(row, WellPlaces.Working.NET_ALL),
                    Optional.of(same));
            valueOf(step, well, row, WellPlaces.Working.CONCENTRATION_ALL)
                    .ifPresent(formula -> sheet.formula(
                            WellPlaces.Working.VALUE_ALL.column(), formula, same.value(), WORKING.format(Looks.CREEP)));
        }
    }
}
