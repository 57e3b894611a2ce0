package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.poi.ss.util.CellRangeAddress;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.method.Sample;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.ResultScale;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes the sheet Results: the columns of {@code results.csv}, live from the sheet Wells, with the working beside them. */
final class ResultsSheet {
    private static final Look WORKING = Looks.NOTE;
    private static final Look INPUT = Looks.NOTE.fill(Look.Fill.INPUT);
    private static final double PERCENT = 100;

    private final Draft draft;
    private final Sheet sheet;
    private final ResultPlaces places;

    private ResultsSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
        this.places = draft.results();
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new ResultsSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(0);
        for (int column = 0; column < ResultColumns.count(); column++) {
            ResultColumns each = ResultColumns.at(column);
            sheet.text(column, each.title(), Looks.head(each.isNumber(), each.isIndented()));
        }
        List<String> working = new ArrayList<>(Arrays.stream(ResultPlaces.Working.values())
                .map(ResultPlaces.Working::title)
                .toList());
        for (int i = 1; i <= places.replicates(); i++) {
            working.add("value_" + i);
        }
        for (int i = 1; i <= places.replicates(); i++) {
            working.add("value_" + i + "_all");
        }
        sheet.heads(ResultColumns.count(), working, Looks.HEAD_WORKING);
        for (Judgement judgement : draft.report().assessment().judgements()) {
            int row = places.row(judgement.result());
            sheet.row(row);
            ResultColumns.write(draft.report(), judgement, new Columns(judgement, row));
            new Extra(judgement, row).write();
        }
        differences();
        sheet.freeze(1, 5);
        sheet.poi().setAutoFilter(new CellRangeAddress(0, places.lastRow(), 0, ResultColumns.count() - 1));
        sheet.widths(26, 8, 8, 6, 26, 16, 11, 9, 9, 9, 6, 4, 11, 9, 11, 10, 17, 10, 32, 12, 10, 10, 12);
        for (int column = ResultColumns.count(); column < places.firstReplicateAll() + places.replicates(); column++) {
            sheet.width(column, column < places.firstReplicate() ? 17 : 12);
        }
        sheet.print(true, false, 1, draft.report().run());
        sheet.printArea(places.lastRow(), ResultColumns.count() - 1);
    }

    /** Results by difference follow from the values of two rows above. */
    private void differences() throws IOException {
        List<JudgedDifference> all = draft.report().assessment().differences();
        for (int i = 0; i < all.size(); i++) {
            JudgedDifference judged = all.get(i);
            sheet.row(places.rowOfDifference(i));
            DifferenceRow.write(draft.report(), judged, new DifferenceCells(draft, sheet, places, judged));
        }
    }

    private static String unlessEmpty(String cell, String formula) {
        return "IF(" + cell + "=\"\",\"\"," + formula + ")";
    }

    private String replicates(int row) {
        return At.across(row, places.firstReplicate(), places.firstReplicate() + places.replicates() - 1);
    }

    private String replicatesAll(int row) {
        return At.across(row, places.firstReplicateAll(), places.firstReplicateAll() + places.replicates() - 1);
    }

    /** The mean of the wells that count; empty if one of them has no value. */
    private static String mean(String range) {
        return "IF(OR(COUNT(" + range + ")=0,COUNTIF(" + range + ",\"none\")>0),\"\",AVERAGE(" + range + "))";
    }

    /** The rise that a spike should make, in g/L. */
    private OptionalDouble addedGPerL(StepAnalysis step, Content.Spike spike) {
        Optional<Quantity> added = spike.added().of(step.step().analyte().name());
        if (added.isEmpty()) {
            return OptionalDouble.empty();
        }
        Quantity quantity = added.get();
        return OptionalDouble.of(
                quantity.unit().kind() == Kind.AMOUNT_CONCENTRATION
                        ? quantity.base() * step.step().analyte().molarMass().orElseThrow() / 1000
                        : quantity.base());
    }

    /** How a verdict is coloured, beside its word. */
    static Look verdict(Verdict verdict) {
        return switch (verdict) {
            case REPORT -> Look.PLAIN.face(Look.Face.GOOD).fill(Look.Fill.GOOD);
            case CHECK -> Look.PLAIN.face(Look.Face.ATTENTION).fill(Look.Fill.ATTENTION);
            case REPEAT -> Look.PLAIN.face(Look.Face.BAD).fill(Look.Fill.BAD);
        };
    }

    /** Writes the columns of {@code results.csv}, putting a formula where there is one. */
    private final class Columns implements Fields {
        private final Judgement judgement;
        private final Result result;
        private final int row;
        private int column = -1;

        Columns(Judgement judgement, int row) {
            this.judgement = judgement;
            this.result = judgement.result();
            this.row = row;
        }

        @Override
        public void text(String text) {
            Look look = switch (ResultColumns.at(++column)) {
                case VERDICT -> verdict(judgement.verdict()).align(Look.Align.INDENT);
                case FLAGS, ADVICE, ADVICE_FOR -> text.isEmpty() ? Looks.TEXT : Looks.COMPUTED;
                case SAMPLE, UNIT -> Looks.INDENTED;
                default -> Looks.TEXT;
            };
            sheet.text(column, text, look);
        }

        @Override
        public void number(double number) {
            number(OptionalDouble.of(number));
        }

        @Override
        public void empty() {
            number(OptionalDouble.empty());
        }

        @Override
        public void number(OptionalDouble number) {
            ResultColumns what = ResultColumns.at(++column);
            Look look = look(what, number);
            Optional<String> formula = formula(what);
            if (formula.isPresent()) {
                sheet.formula(column, formula.get(), number, look);
            } else if (number.isPresent()) {
                sheet.number(column, number.getAsDouble(), look);
            } else {
                sheet.blank(column, look);
            }
        }

        private Look look(ResultColumns what, OptionalDouble number) {
            return switch (what) {
                case VALUE, VALUE_ALL ->
                    Look.PLAIN.format(number.isPresent() ? Looks.digits(number.getAsDouble(), 4) : "");
                case U_STANDARD, U_EXPANDED ->
                    number.isPresent() ? Looks.COMPUTED.format(Looks.digits(number.getAsDouble(), 2)) : Looks.TEXT;
                case K -> number.isPresent() ? Looks.COMPUTED.format("0.00") : Looks.TEXT;
                case CV_PERCENT -> Look.PLAIN.format("0.00");
                case RECOVERY_PERCENT -> Look.PLAIN.format("0.0");
                case DILUTION, ASSIGNED -> number.isPresent() ? Looks.INPUT : Looks.TEXT;
                default -> Looks.TEXT;
            };
        }

        private Optional<String> formula(ResultColumns what) {
            String range = replicates(row);
            String value = ResultPlaces.own(row, ResultColumns.VALUE);
            return switch (what) {
                case VALUE -> Optional.of(mean(range));
                case N -> Optional.of("COUNT(" + range + ")+COUNTIF(" + range + ",\"none\")");
                case CV_PERCENT -> {
                    String sd = ResultPlaces.own(row, ResultPlaces.Working.SD);
                    yield Optional.of(unlessEmpty(sd, "IF(" + value + "=0,\"\",100*" + sd + "/ABS(" + value + "))"));
                }
                case VALUE_ALL -> draft.whole().map(all -> mean(replicatesAll(row)));
                case RECOVERY_PERCENT -> recovery(value);
                default -> Optional.empty();
            };
        }

        private Optional<String> recovery(String value) {
            if (result.role().equals("control")) {
                String assigned = ResultPlaces.own(row, ResultColumns.ASSIGNED);
                return result.assigned().isPresent() && result.assigned().getAsDouble() > 0
                        ? Optional.of(unlessEmpty(value, "100*" + value + "/" + assigned))
                        : Optional.empty();
            }
            Content content =
                    draft.analysis().assay().layout().at(result.wells().get(0));
            if (!(content instanceof Content.Spike spike)) {
                return Optional.empty();
            }
            OptionalDouble added = addedGPerL(draft.analysis().stepOf(result), spike);
            Optional<Integer> sample = places.rowOfSample(result.step(), spike.of());
            if (added.isEmpty() || !(added.getAsDouble() > 0) || sample.isEmpty()) {
                return Optional.empty();
            }
            String spiked = ResultPlaces.own(row, ResultPlaces.Working.CONCENTRATION);
            String plain = ResultPlaces.own(sample.get(), ResultPlaces.Working.CONCENTRATION);
            return Optional.of("IF(OR(" + spiked + "=\"\"," + plain + "=\"\"),\"\",100*(" + spiked + "-(1-"
                    + ResultPlaces.own(row, ResultPlaces.Working.FRACTION) + ")*" + plain + ")/"
                    + ResultPlaces.own(row, ResultPlaces.Working.ADDED) + ")");
        }
    }

    /** Writes the columns of the working. */
    private final class Extra {
        private final Result result;
        private final StepAnalysis step;
        private final ResultScale scale;
        private final String formula;
        private final int row;

        Extra(Judgement judgement, int row) {
            this.result = judgement.result();
            this.step = draft.analysis().stepOf(result);
            this.scale = new ResultScale(draft.analysis(), result);
            this.formula = new ScaleFormula(draft, judgement, scale).formula();
            this.row = row;
        }

        void write() {
            input(ResultPlaces.Working.VOLUME, scale.ownVolume());
            Optional<Sample.Extraction> solid = scale.solid();
            input(
                    ResultPlaces.Working.MASS,
                    solid.isPresent() ? OptionalDouble.of(solid.get().massG()) : OptionalDouble.empty());
            input(
                    ResultPlaces.Working.EXTRACT,
                    solid.isPresent() ? OptionalDouble.of(solid.get().extractMl()) : OptionalDouble.empty());
            input(ResultPlaces.Working.DENSITY, scale.density());
            sheet.formula(
                    ResultPlaces.Working.SCALE.column(),
                    formula,
                    scale.value(),
                    WORKING.format(Looks.digits(scale.value(), 5)));
            concentration();
            spike();
            deviation();
            for (int i = 0; i < result.wells().size(); i++) {
                replicate(i);
            }
            if (draft.whole().isPresent()) {
                for (int i = 0; i < result.wells().size(); i++) {
                    replicateAll(i);
                }
            }
        }

        private void input(ResultPlaces.Working column, OptionalDouble value) {
            if (value.isPresent()) {
                sheet.number(column.column(), value.getAsDouble(), INPUT);
            }
        }

        private void concentration() {
            String value = ResultPlaces.own(row, ResultColumns.VALUE);
            OptionalDouble c = result.value().isPresent()
                    ? OptionalDouble.of(result.value().getAsDouble() / scale.value())
                    : OptionalDouble.empty();
            sheet.formula(
                    ResultPlaces.Working.CONCENTRATION.column(),
                    unlessEmpty(value, value + "/" + ResultPlaces.own(row, ResultPlaces.Working.SCALE)),
                    c,
                    WORKING.format(Looks.CREEP));
        }

        private void spike() {
            Content content =
                    draft.analysis().assay().layout().at(result.wells().get(0));
            if (content instanceof Content.Spike spike) {
                input(ResultPlaces.Working.ADDED, addedGPerL(step, spike));
                input(ResultPlaces.Working.FRACTION, OptionalDouble.of(spike.fraction()));
            }
        }

        private void deviation() {
            OptionalDouble sd = result.cvPercent().isPresent() && result.value().isPresent()
                    ? OptionalDouble.of(result.cvPercent().getAsDouble()
                            * Math.abs(result.value().getAsDouble())
                            / PERCENT)
                    : OptionalDouble.empty();
            String range = replicates(row);
            sheet.formula(
                    ResultPlaces.Working.SD.column(),
                    "IF(OR(" + ResultPlaces.own(row, ResultColumns.VALUE) + "=\"\",COUNT(" + range + ")<2),\"\",STDEV("
                            + range + "))",
                    sd,
                    WORKING.format(sd.isPresent() ? Looks.digits(sd.getAsDouble(), 3) : ""));
        }

        private void replicate(int index) {
            Well well = result.wells().get(index);
            WellResult of = step.where(each -> each.well().equals(well)).get(0);
            String used = draft.wells().cell(step.number(), well, WellColumns.USED);
            replicate(
                    places.firstReplicate() + index,
                    "IF(" + used + "=\"yes\",",
                    draft.wells().cell(step.number(), well, WellColumns.VALUE),
                    well,
                    of,
                    of.used());
        }

        private void replicateAll(int index) {
            Well well = result.wells().get(index);
            draft.whole(step, well)
                    .ifPresent(of -> replicate(
                            places.firstReplicateAll() + index,
                            "",
                            draft.wells().cell(step.number(), well, WellPlaces.Working.VALUE_ALL),
                            well,
                            of,
                            true));
        }

        private void replicate(int column, String condition, String value, Well well, WellResult of, boolean used) {
            String counts = draft.wells().cell(step.number(), well, WellPlaces.Working.COUNTS);
            String formula = "IF(" + counts + "=1," + condition + "IF(" + value + "=\"\",\"none\"," + value + ")"
                    + (condition.isEmpty() ? "" : ",\"\")") + ",\"\")";
            boolean counting = used && (of.deltaA().isPresent() || of.flags().contains(Flag.OVER_RANGE));
            Look look = WORKING.align(Look.Align.RIGHT);
            if (counting && of.value().isPresent()) {
                double number = of.value().getAsDouble();
                sheet.formula(column, formula, number, look.format(Looks.digits(number, 5)));
            } else {
                sheet.formula(column, formula, counting ? "none" : "", look);
            }
        }
    }
}
