package tallywell.report;

import java.io.IOException;
import java.util.OptionalDouble;
import tallywell.assess.JudgedDifference;
import tallywell.quantity.Numbers;

/** The cells of a result by difference: its value is a formula on the values of the two results it follows from. */
final class DifferenceCells implements Fields {
    private final Sheet sheet;
    private final ResultPlaces places;
    private final JudgedDifference judged;
    private int column = -1;

    DifferenceCells(Sheet sheet, ResultPlaces places, JudgedDifference judged) {
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
            case VALUE, VALUE_ALL ->
                sheet.formula(column, formula(what), OptionalDouble.of(number), Look.PLAIN.format(digits(number)));
            case U_STANDARD, U_EXPANDED, K -> sheet.number(column, number, Looks.COMPUTED.format(digits(number)));
            default -> sheet.number(column, number, Looks.TEXT);
        }
    }

    private static String digits(double number) {
        return Looks.digits(number, 4);
    }

    private String formula(ResultColumns what) {
        String total = ResultPlaces.own(places.row(judged.difference().total()), what);
        String free = ResultPlaces.own(places.row(judged.difference().free()), what);
        return "IF(OR(" + total + "=\"\"," + free + "=\"\"),\"\","
                + Numbers.plain(judged.difference().factor()) + "*(" + total + "-" + free + "))";
    }

    @Override
    public void empty() {
        sheet.blank(++column, Looks.TEXT);
    }
}
