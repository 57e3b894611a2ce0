package tallywell.across;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tallywell.assess.Verdict;
import tallywell.notice.InputException;
import tallywell.quantity.Unit;

/** What counts as the same sample in several runs. */
class LinkingTest {
    private static List<String> linked(RunResults... runs) throws InputException {
        return Linking.of(List.of(runs)).stream()
                .map(link -> link.found().stream()
                        .map(each -> each.run() + each.place())
                        .toList()
                        .toString())
                .toList();
    }

    @Test
    void idsGoBeforeNames() throws Exception {
        assertThat(linked(
                        Made.run("a ", Made.found("a ", 1, "Vat 1", "X7"), Made.found("a ", 2, "Vat 2", "X8")),
                        Made.run("b ", Made.found("b ", 1, "Vat 1", "X8"), Made.found("b ", 2, "Vat one", "X7"))))
                .containsExactly("[a slot 1, b slot 2]", "[a slot 2, b slot 1]");
    }

    @Test
    void nameLinksWhereOneRunHasNoId() throws Exception {
        assertThat(linked(
                        Made.run("a ", Made.found("a ", 1, "Vat 1", "")),
                        Made.run("b ", Made.found("b ", 5, "Vat 1", "X7")),
                        Made.run("c ", Made.found("c ", 6, "Vat one", "X7"))))
                .containsExactly("[a slot 1, b slot 5, c slot 6]");
    }

    @Test
    void sameNameWithDifferentIdsIsNotTheSame() throws Exception {
        assertThat(linked(
                        Made.run("a ", Made.found("a ", 1, "Vat", "X7"), Made.found("a ", 2, "Other", "")),
                        Made.run("b ", Made.found("b ", 1, "Vat", "X8"), Made.found("b ", 2, "Other", ""))))
                .containsExactly("[a slot 1]", "[a slot 2, b slot 2]", "[b slot 1]");
    }

    @Test
    void namesThatDifferInCaseAreDifferent() throws Exception {
        assertThat(linked(
                        Made.run("a ", Made.found("a ", 1, "vat", ""), Made.found("a ", 2, "Vat", "")),
                        Made.run("b ", Made.found("b ", 3, "Vat", ""))))
                .containsExactly("[a slot 1]", "[a slot 2, b slot 3]");
    }

    private static void refused(String message, RunResults... runs) {
        assertThatThrownBy(() -> Linking.of(List.of(runs)))
                .isInstanceOf(InputException.class)
                .hasMessage(message);
    }

    @Test
    void sampleTwiceInARunIsRefused() {
        refused(
                "b: found the sample 'Vat' twice, in slot 3 and slot 9; expected it once, or ids that tell the two apart",
                Made.run("a", Made.found("a", 1, "Vat", "")),
                Made.run("b", Made.found("b", 3, "Vat", ""), Made.found("b", 9, "Vat", "")));
    }

    @Test
    void nameThatBelongsToSeveralIdsIsRefused() {
        refused(
                "a, slot 1: found the sample 'Vat' without an id, and the same name with several ids in the runs; give it"
                        + " its id in the sample list",
                Made.run("a", Made.found("a", 1, "Vat", "")),
                Made.run("b", Made.found("b", 3, "Vat", "X7"), Made.found("b", 9, "Vat", "X8")));
    }

    @Test
    void runsWithNoSampleInCommonAreRefused() {
        refused(
                "b: found no sample in common with a; expected the same ids, or the same names, in the sample lists",
                Made.run("a", Made.found("a", 1, "Vat 1", "")),
                Made.run("b", Made.found("b", 1, "Vat 2", "")));
    }

    private static Found of(String run, String analyte, Unit unit) {
        return Made.found(run, 1, "Vat", "", analyte, unit, 1, Verdict.REPORT, Made.parts(0.1, Map.of()));
    }

    @Test
    void runsOfDifferentAnalytesAreRefused() {
        refused(
                "b: found no analyte in common: malic acid in one run, citric acid in another; expected runs of the same"
                        + " analyte",
                Made.run("a", of("a", "malic acid", Unit.GRAM_PER_LITRE)),
                Made.run("b", of("b", "citric acid", Unit.GRAM_PER_LITRE)));
    }

    @Test
    void unitsOfDifferentKindsAreRefused() {
        refused(
                "b, slot 1: found 'Vat' in g/100g, and in g/L in a; expected units of one kind, so that the values can be"
                        + " compared",
                Made.run("a", of("a", "malic acid", Unit.GRAM_PER_LITRE)),
                Made.run("b", of("b", "malic acid", Unit.GRAM_PER_100_G)));
    }
}
