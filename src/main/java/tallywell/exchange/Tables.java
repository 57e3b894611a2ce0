package tallywell.exchange;

import java.util.Arrays;
import java.util.List;
import tallywell.assess.Verdict;
import tallywell.budget.Basis;

/** The columns of the two tables that a package shares with {@code --tables}, and of its list of units. */
final class Tables {
    private static final String RUN = "Path of the run file as typed";
    private static final String FLAGS = "Words of a closed list, joined by blanks, that say what is special";
    private static final String UNIT = "Unit of the value; its UCUM code stands in the table units";

    static final List<Column> RESULTS = List.of(
            Column.text("run", RUN).required(),
            Column.text("plate", "Name of the plate, where the export gives one"),
            Column.text("role", "What the row is of").required().oneOf("sample", "control", "spike", "difference"),
            Column.whole("slot", "Slot of the layout; empty for controls and spikes"),
            Column.text("sample", "Name of the sample or control").required(),
            Column.text("analyte", "What is measured").required(),
            Column.number("value", "Value in the original sample; empty if it could not be determined")
                    .perRow(),
            Column.text("unit", UNIT).required(),
            Column.number("u", "Standard uncertainty").perRow(),
            Column.number("U", "Expanded uncertainty for 95 %, k times u").perRow(),
            Column.number("k", "Coverage factor").in(Ucum.ONE),
            Column.whole("n", "Wells used").required(),
            Column.number("cv_percent", "Coefficient of variation of the values of the wells")
                    .in("%"),
            Column.number("dilution", "Final volume over sample volume")
                    .required()
                    .in(Ucum.ONE),
            Column.number("value_all", "The value with excluded wells put back").perRow(),
            Column.number("assigned", "Assigned value of a control").perRow(),
            Column.number("recovery_percent", "Recovery of a control or spike").in("%"),
            Column.text("verdict", "What to do with the result")
                    .required()
                    .oneOf(Arrays.stream(Verdict.values()).map(Verdict::word).toArray(String[]::new)),
            Column.text("flags", FLAGS),
            Column.text("advice", "How to repeat: repeat, dilute: with the dilution to take, or read-longer")
                    .matching("repeat|read-longer|dilute:.+"),
            Column.number("at_most", "Of a difference not to be told from none: with 95 %, no more is there")
                    .perRow(),
            Column.text("advice_for", "Of a difference: the half that the advice is for")
                    .matching("free|total|both"),
            Column.text(
                            "U_basis",
                            "What U rests on; where it is scatter only, U says nothing of where the true value lies")
                    .oneOf(Arrays.stream(Basis.values()).map(Basis::word).toArray(String[]::new)));

    static final List<Column> WELLS = List.of(
            Column.text("run", RUN).required(),
            Column.text("plate", "Name of the plate, where the export gives one"),
            Column.text("well", "Well of the plate").required().matching(Column.WELL),
            Column.text("role", "What the well is for")
                    .required()
                    .oneOf("blank", "standard", "control", "sample", "sample-blank", "spike"),
            Column.text("group", "Wells that share their blanks"),
            Column.whole("slot", "Slot of the layout that the sample stands in"),
            Column.text("sample", "Name of the sample or control"),
            Column.whole("step", "Which trigger, from 1").required(),
            Column.text("analyte", "What is measured").required(),
            Column.number("a_before", "Absorbance before the trigger, as read").in(Ucum.ONE),
            Column.number("a_after", "Absorbance after the reaction, as used").in(Ucum.ONE),
            Column.number("creep_per_min", "Steady change after the reaction").in("min-1"),
            Column.number(
                            "delta_a",
                            "Absorbance after less before, turned round where the signal falls; of one common light path where it was measured")
                    .in(Ucum.ONE),
            Column.number("u_delta_a", "Standard uncertainty of delta_a from the trace")
                    .in(Ucum.ONE),
            Column.number("net_delta_a", "delta_a less that of the blanks").in(Ucum.ONE),
            Column.number("value", "Value in the original sample, of samples, controls and spikes")
                    .perRow(),
            Column.text("unit", UNIT),
            Column.yesNo("used", "Whether the well counts").required(),
            Column.text("flags", FLAGS),
            Column.number("path_cm", "Light path of the well, where it was measured")
                    .in("cm"));

    static final List<Column> UNITS = List.of(
            Column.text("unit", "Unit as the other tables print it").required(),
            Column.text("ucum", "Its code in the Unified Code for Units of Measure, case sensitive")
                    .required());

    private Tables() {}
}
