package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.assess.Verdict;
import tallywell.desk.ResultRow;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;
import tallywell.workup.Result;

/** The order of results by one of their numbers. */
class ResultsModelTest {
    private static final List<ResultRow> ROWS = List.of(
            row("none", "", "", "not measured"),
            row("five", "5", "0.50", "-2.5"),
            row("minus two", "-2", "0.061", "10.2"),
            row("half", "0.5", "1.2", "9.9"),
            row("also none", "", "", ""));

    private static ResultRow row(String name, String value, String uncertainty, String creep) {
        OptionalDouble number = value.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(value));
        Result result = result(name, number);
        return new ResultRow(result, name, value, uncertainty, "", creep, "", "1", Verdict.REPORT, "");
    }

    private static Result result(String name, OptionalDouble number) {
        return new Result(
                "sample",
                "1",
                OptionalInt.of(1),
                name,
                "analyte",
                1,
                List.of(),
                number,
                Unit.GRAM_PER_LITRE,
                2,
                number,
                number,
                Dilution.NONE,
                number,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Set.of());
    }

    private static List<String> sorted(int column, boolean descending) {
        List<ResultRow> rows = new ArrayList<>(ROWS);
        rows.sort((one, other) -> (descending ? -1 : 1) * ResultsModel.compare(column, descending, one, other));
        return rows.stream().map(ResultRow::name).toList();
    }

    /** Value, coefficient of variation and net ΔA. */
    @ParameterizedTest
    @ValueSource(ints = {1, 4, 6})
    void whatHasNoNumberStandsLastWhicheverWayItIsSorted(int column) {
        assertThat(sorted(column, false)).containsExactly("minus two", "half", "five", "none", "also none");
        assertThat(sorted(column, true)).containsExactly("five", "half", "minus two", "none", "also none");
    }

    @ParameterizedTest
    @CsvSource({"2, minus two, five, half", "5, five, half, minus two"})
    void uncertaintyAndCreepAreSortedByTheirOwnNumbers(int column, String first, String second, String third) {
        assertThat(sorted(column, false)).containsExactly(first, second, third, "none", "also none");
    }
}
