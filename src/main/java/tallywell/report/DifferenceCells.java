package tallywell.report;

import java.io.IOException;
import java.util.OptionalDouble;
import tallywell.assess.JudgedDifference;
import tallywell.quantity.Numbers;
import tallywell.workup.Half;

/** The cells of a result by difference: its value is a formula on the values of the two results it follows from. */
final class DifferenceCells implements Fields {
    private final Draft draft;
    private final Sheet sheet;
    private final ResultPlaces places;
    private final JudgedDifference judged;
    private int column = -1;

    DifferenceCells(Draft draft, Sheet sheet, ResultPlaces places, JudgedDifference judged) {
        this.draft = draft;
        this.sheet = sheet;
        this.places = places;
        this.judged = judged;
    }

    @Override
    public void text(String text) throws IOException {
        column++;
        sheet.text(
                column,
                text,
                column == ResultColumns.VERDICT.column() ? ResultsSheet.verdict(judged.verdict()) : Looks.TEXT);
    }

    @Override
    public void number(double number) throws IOException {
        ResultColumns what = ResultColumns.at(++column);
        switch (what) {
            case VALUE, VALUE_ALL -> {
                if (isFormula(what)) {
                    sheet.formula(column, formula(what), OptionalDouble.of(number), Look.PLAIN.format(digits(number)));
                } else {
                    sheet.number(column, number, Looks.COMPUTED.format(digits(number)));
                }
            }
            case U_STANDARD, U_EXPANDED, K, AT_MOST ->
                sheet.number(column, number, Looks.COMPUTED.format(digits(number)));
            default -> sheet.number(column, number, Looks.TEXT);
        }
    }

    private static String digits(double number) {
        return Looks.digits(number, 4);
    }

    /** What counts of a half below the standards is a formula too; with excluded wells put back it is not. */
    private boolean isFormula(ResultColumns what) {
        return what == ResultColumns.VALUE
                || judged.difference().whole().below() == Half.Below.NOT
                        && judged.difference().unbound().below() == Half.Below.NOT;
    }

    private String formula(ResultColumns what) {
        String factor = Numbers.plain(judged.difference().factor());
        if (what == ResultColumns.VALUE) {
            return new HalfFormula(draft, places)
                    .difference(
                            factor,
                            judged.difference().whole(),
                            judged.difference().unbound());
        }
        String total = ResultPlaces.own(places.row(judged.difference().total()), what);
        String free = ResultPlaces.own(places.row(judged.difference().free()), what);
        return "IF(OR(" + total + "=\"\"," + free + "=\"\"),\"\"," + factor + "*(" + total + "-" + free + "))";
    }

    @Override
    public void empty() {
        sheet.blank(++column, Looks.TEXT);
    }
}
