package tallywell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Bench;
import tallywell.method.Planning;
import tallywell.method.Sample;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;

/** Each half of a difference has its own dilution, from what is expected of it. */
class HalvesPlanTest {
    private static AssayMethod method(String id) throws InputException {
        return new MethodLibrary().find(id).orElseThrow();
    }

    private static WantedSample half(int slot, Treatment treatment, String expected) {
        Sample sample = new Sample(
                slot,
                "Drink",
                Dilution.NONE,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                treatment.word(),
                "",
                "",
                treatment);
        return new WantedSample(sample, false, expected, "list.csv, line " + (slot + 1));
    }

    private static Plan plan(String id, String free, String total) throws InputException {
        return Planner.plan(new Planner.Wanted(
                "run.yaml",
                "",
                "",
                method(id),
                new LayoutReader().read(Path.of("plate-layouts/free-and-total-in-duplicate.yaml")),
                List.of(half(1, Treatment.FREE, free), half(19, Treatment.TOTAL, total)),
                List.of(),
                Planning.USUAL));
    }

    private static List<Double> dilutions(Plan plan) {
        return plan.samples().stream()
                .map(each -> each.sample().dilution().factor())
                .toList();
    }

    /** Contents from memory; the standards of the layout reach from 0.05 to 0.42 g/L, the middle is 0.235. */
    @ParameterizedTest
    @CsvSource({
        "lactose-galactose-340, milk, 1, 100",
        "lactose-galactose-340, lactose-free milk, 100, 100",
        "lactose-galactose-340, whey, 2, 100",
        "sucrose-340, soft drink, 100, 200",
        "sucrose-340, juice, 100, 200",
        "lactose-galactose-340, lactose: 44-50 g/L; D-galactose: 0.02-0.2 g/L, 1, 100",
        "sucrose-340, sucrose: 0.4 g/L; D-glucose: 0.01 g/L, 1, 1"
    })
    void eachHalfIsDilutedForItself(String id, String expected, double free, double total) throws InputException {
        Plan plan = plan(id, expected, expected);
        assertThat(dilutions(plan)).containsExactly(free, total);
    }

    /** 47 g/L of lactose release 47 · 180.156 / 342.297 = 24.74 g/L of galactose, by hand; at 100, over 0.4747 g/L: 0.5211. */
    @Test
    void theTotalIsExpectedToHoldWhatIsReleased() throws InputException {
        Plan plan = plan("lactose-galactose-340", "lactose: 47 g/L", "lactose: 47 g/L");
        assertThat(plan.samples().get(1).expectedDeltaA().orElseThrow()).isCloseTo(0.5211, within(2e-4));
        assertThat(plan.notices().toString()).contains("nothing is expected of it");
    }

    @Test
    void contentsThatCannotBeAddedAreRefused() {
        assertThatThrownBy(() -> plan("sucrose-340", "1 g/L", "sucrose: 100 g/L; D-glucose: 20 mmol/L"))
                .hasMessageContaining("expected both in one unit");
    }

    /**
     * Every row of a half, at both ends, lies in the window at its dilution, and below only where nothing is diluted, or where
     * the half is free: what is free and little takes little off.
     */
    @ParameterizedTest
    @ValueSource(strings = {"sucrose-340", "lactose-galactose-340"})
    void usualDilutionsOfHalvesLieInTheWindow(String id) throws InputException {
        AssayMethod method = method(id);
        WorkingRange range = WorkingRange.of(method, method.steps().get(0), Optional.empty());
        assertThat(method.bench().dilutions()).isNotEmpty();
        for (Bench.Usual row : method.bench().dilutions()) {
            double factor = row.dilution().factor();
            double low = row.content().low() * row.content().unit().factor() / factor;
            double high = row.content().high() * row.content().unit().factor() / factor;
            assertThat(row.treatment()).as(row.name()).isNotEqualTo(Treatment.NONE);
            assertThat(high)
                    .as(row.name())
                    .isBetween(range.lowest().orElseThrow(), range.highest().orElseThrow());
            if (factor > 1 && row.treatment() == Treatment.TOTAL) {
                assertThat(low).as(row.name()).isGreaterThan(range.lowest().orElseThrow());
            }
        }
    }

    @Test
    void treatmentOfARowIsFreeOrTotalAndNeedsADifference() throws InputException {
        String text = new MethodLibrary().file("sucrose-340").orElseThrow();
        assertThatThrownBy(() -> new MethodReader()
                        .parse(Path.of("a.yaml"), text.replace("juice, treatment: free", "juice, treatment: bound")))
                .hasMessageContaining("found 'treatment: bound'; expected free or total");
        assertThatThrownBy(() -> new MethodReader()
                        .parse(Path.of("a.yaml"), text.replaceAll("(?s)difference:.*?accept:", "accept:")))
                .hasMessageContaining("gives nothing by difference");
        assertThatThrownBy(() -> new MethodReader()
                        .parse(
                                Path.of("a.yaml"),
                                text.replace("    yield: 100 %\n", "    yield: 100 %\n    free-of: 0 g/L\n")))
                .hasMessageContaining("free of");
    }
}
