package tallywell.report;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import tallywell.assess.BasisWords;
import tallywell.assess.Judgement;
import tallywell.budget.Basis;
import tallywell.budget.ResultBudget;
import tallywell.workup.Flag;
import tallywell.workup.Result;

/** The columns of {@code results.csv}, which the sheet Results has too. */
enum ResultColumns {
    RUN,
    PLATE,
    ROLE,
    SLOT,
    SAMPLE,
    ANALYTE,
    VALUE,
    UNIT,
    U_STANDARD("u"),
    U_EXPANDED("U"),
    K,
    N,
    CV_PERCENT,
    DILUTION,
    VALUE_ALL,
    ASSIGNED,
    RECOVERY_PERCENT,
    VERDICT,
    FLAGS,
    ADVICE,
    AT_MOST,
    ADVICE_FOR,
    U_BASIS("U_basis");

    private static final List<ResultColumns> ALL = List.of(values());

    private final String title;

    ResultColumns(String title) {
        this.title = title;
    }

    ResultColumns() {
        this.title = name().toLowerCase(java.util.Locale.ROOT);
    }

    /** The name in the header row. */
    String title() {
        return title;
    }

    /** The column, from 0. */
    int column() {
        return ALL.indexOf(this);
    }

    /** The column at an index from 0. */
    static ResultColumns at(int column) {
        return ALL.get(column);
    }

    /** How many columns there are. */
    static int count() {
        return ALL.size();
    }

    /** Whether the column holds numbers. */
    boolean isNumber() {
        return switch (this) {
            case RUN, PLATE, ROLE, SAMPLE, ANALYTE, UNIT, VERDICT, FLAGS, ADVICE, ADVICE_FOR, U_BASIS -> false;
            default -> true;
        };
    }

    /** Whether the column is a text right of a number, which should keep a distance. */
    boolean isIndented() {
        return this == SAMPLE || this == UNIT || this == VERDICT;
    }

    /** The header row. */
    static List<String> titles() {
        return java.util.Arrays.stream(values()).map(ResultColumns::title).toList();
    }

    /** Writes the row of one result, one field for each column. */
    static void write(Report report, Judgement judgement, Fields to) throws IOException {
        Result result = judgement.result();
        to.text(report.run());
        to.text(report.analysis().assay().plate());
        to.text(result.role());
        if (result.slot().isPresent()) {
            to.number(result.slot().getAsInt());
        } else {
            to.empty();
        }
        to.text(result.name());
        to.text(result.analyte());
        to.number(result.value());
        to.text(result.unit().symbol());
        Optional<ResultBudget> budget = judgement.budget();
        to.number(number(budget, ResultBudget::standardUncertainty));
        to.number(number(budget, ResultBudget::expandedUncertainty));
        to.number(number(budget, ResultBudget::coverageFactor));
        to.number(result.n());
        to.number(result.cvPercent());
        to.number(result.dilution().factor());
        to.number(result.valueAll());
        to.number(result.assigned());
        to.number(result.recoveryPercent());
        to.text(judgement.verdict().word());
        to.text(words(result.flags()));
        to.text(judgement.advice().word());
        to.empty();
        to.text("");
        to.text(BasisWords.of(judgement).map(Basis::word).orElse(""));
    }

    private static OptionalDouble number(Optional<ResultBudget> budget, ToDoubleFunction<ResultBudget> what) {
        return budget.isPresent() ? OptionalDouble.of(what.applyAsDouble(budget.get())) : OptionalDouble.empty();
    }

    /** Flags as files spell them, joined by blanks. */
    static String words(Set<Flag> flags) {
        return flags.stream().map(Flag::word).collect(Collectors.joining(" "));
    }
}
