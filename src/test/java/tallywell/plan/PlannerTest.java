package tallywell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.files.LayoutReader;
import tallywell.files.MethodLibrary;
import tallywell.files.MethodReader;
import tallywell.method.AssayMethod;
import tallywell.method.Planning;
import tallywell.method.Sample;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.plan.Plan.PlannedSample;
import tallywell.plan.Plan.PlannedStandard;
import tallywell.plate.Layout;
import tallywell.quantity.Dilution;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/** Plans worked by hand: C1 V1 = C2 V2 throughout. */
class PlannerTest {
    /** OIV-MA-AS313-11 at 365 nm: factor 0.876 g/L; a window of 30 to 350 mg/L is 0.0343 to 0.3998 in net ΔA. */
    private static final String MALIC_365 = """
            tallywell: method/1
            id: malic-365
            signal: {species: NADH, wavelength: 365 nm, absorptivity: 3400 L/mol/cm}
            steps:
              - analyte: {name: L-malic acid, molar-mass: 134.09 g/mol}
                volumes: {sample: 0.1 mL, before-trigger: 2.21 mL, after-trigger: 2.22 mL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            accept: {delta-a: {least: 0.0343, most: 0.3998}}
            """;

    private static final String SMALL = """
            tallywell: layout/1
            name: small
            plate: 6
            wells:
              A: o 1 2
              B: a 1 2
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.2 g/L}
            """;

    @TempDir
    private Path folder = Path.of("");

    private Layout layout(String text) throws InputException, IOException {
        Path file = folder.resolve("layout.yaml");
        Files.writeString(file, text);
        return new LayoutReader().read(file);
    }

    private static AssayMethod method(String text) throws InputException {
        return new MethodReader().parse(Path.of("method.yaml"), text);
    }

    private static WantedSample sample(int slot, String name, String expected) {
        return sample(slot, name, expected, OptionalDouble.empty());
    }

    private static WantedSample sample(int slot, String name, String expected, OptionalDouble volume) {
        return new WantedSample(
                new Sample(
                        slot,
                        name,
                        Dilution.NONE,
                        volume,
                        Optional.empty(),
                        OptionalDouble.of(1.05),
                        "",
                        "",
                        "",
                        Treatment.NONE),
                false,
                expected,
                "list.csv, line " + (slot + 1));
    }

    private static Planner.Wanted wanted(
            AssayMethod method, Layout layout, Planning planning, WantedSample... samples) {
        return new Planner.Wanted("run.yaml", "", "", method, layout, List.of(samples), List.of(), planning);
    }

    private static Planning planning(double diluteTo, double least, Map<String, Quantity> stocks) {
        return new Planning(
                List.of(),
                0.10,
                OptionalDouble.of(least),
                diluteTo,
                stocks,
                100,
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** OIV-MA-AS313-11 (seen): undiluted below 350 mg/L at 365 nm, else diluted to 30 to 350 mg/L. */
    @ParameterizedTest
    @CsvSource({
        "200 mg/L, 1",
        "300-350 mg/L, 2",
        "1 g/L, 5",
        "3 g/L, 20",
        "6-9 g/L, 50",
        "0.5-0.9 g/L, 5",
        "22.37 mmol/L, 20",
        "2.857 mg/kg, 1"
    })
    void malicAcidIsDilutedIntoTheRangeOfThePublishedMethod(String expected, double factor)
            throws InputException, IOException {
        Plan plan = Planner.plan(wanted(method(MALIC_365), layout(SMALL), Planning.USUAL, sample(1, "Tank", expected)));
        Sample planned = plan.samples().get(0).sample();
        assertThat(planned.dilution().factor()).isEqualTo(factor);
    }

    /** Regulation (EEC) No 2676/90 (seen): citric acid diluted to 20 to 400 mg/L. */
    @ParameterizedTest
    @CsvSource({"0.3 g/L", "0.5 g/L", "1 g/L", "4 g/L", "8 g/L", "20 g/L", "55 g/L"})
    void citricAcidIsDilutedIntoTheRangeOfTheRegulation(String expected) throws InputException, IOException {
        AssayMethod citric = method(MALIC_365
                .replace("134.09", "192.1")
                .replace("3400", "6300")
                .replace(
                        "sample: 0.1 mL, before-trigger: 2.21 mL, after-trigger: 2.22 mL",
                        "sample: 0.2 mL, before-trigger: 3.12 mL, after-trigger: 3.14 mL")
                // 20 and 400 mg/L over the factor of 479 mg/L
                .replace("{least: 0.0343, most: 0.3998}", "{least: 0.04178, most: 0.8356}"));
        Plan plan = Planner.plan(wanted(citric, layout(SMALL), Planning.USUAL, sample(1, "Juice", expected)));
        double content = Double.parseDouble(expected.replace(" g/L", ""));
        assertThat(content / plan.samples().get(0).sample().dilution().factor()).isBetween(0.020, 0.400);
    }

    /** V1 = V2 / F; F = 200 in 1 mL with 10 µL at least: 10 times 20, 100 + 900 and 50 + 950 µL. */
    @Test
    void twoStepsWhereOneWouldBeTooSmall() throws InputException, IOException {
        Plan plan = Planner.plan(wanted(
                method(MALIC_365), layout(SMALL), planning(1000, 10, Map.of()), sample(1, "Concentrate", "40 g/L")));
        PlannedSample planned = plan.samples().get(0);
        assertThat(planned.sample().dilution().factor()).isEqualTo(200);
        assertThat(planned.scheme().factor()).isCloseTo(200, within(1e-9));
        assertThat(planned.scheme().steps()).hasSize(2).allSatisfy(step -> {
            assertThat(step.takeUl()).isGreaterThanOrEqualTo(10);
            assertThat(step.takeUl() * step.factor()).isCloseTo(step.takeUl() + step.addUl(), within(1e-9));
        });
        assertThat(planned.scheme().steps().stream().map(DilutionScheme.Transfer::takeUl))
                .containsExactlyInAnyOrder(100.0, 50.0);
    }

    /** Two wells of 100 µL and 10 % more are 220 µL, less than 1 mL; of 600 µL they are 1320, rounded up to 1400 µL. */
    @Test
    void asMuchIsMadeAsTheWellsTake() throws InputException, IOException {
        Layout layout = layout(SMALL);
        AssayMethod large = method(MALIC_365.replace("sample: 0.1 mL", "sample: 0.6 mL"));
        assertThat(Planner.plan(wanted(method(MALIC_365), layout, Planning.USUAL, sample(1, "A", "3 g/L")))
                        .samples()
                        .get(0)
                        .totalUl())
                .isEqualTo(1000);
        assertThat(Planner.plan(wanted(large, layout, Planning.USUAL, sample(1, "A", "3 g/L")))
                        .samples()
                        .get(0)
                        .totalUl())
                .isEqualTo(1400);
    }

    /**
     * L-Malic acid on the built-in plate, 6 wells, 10 % more: buffer 130 · 6 · 1.1 = 858 µL, NAD 171.6, transaminase 132,
     * water 488.4, in all 1650 µL; trigger 132 µL. Level 0.2 g/L from 5 g/L in 1 mL: 40 + 960 µL. By hand.
     */
    @Test
    void mixesAndStandardsByHand() throws InputException, IOException {
        AssayMethod malic = new MethodLibrary().find("l-malic-340").orElseThrow();
        Plan plan = Planner.plan(wanted(
                malic,
                layout(SMALL),
                planning(1000, 10, Map.of("", new Quantity(5, Unit.GRAM_PER_LITRE))),
                sample(0, "first", "0.2 g/L"),
                sample(0, "second", "cider")));
        assertThat(plan.wells()).isEqualTo(6);
        assertThat(plan.samples()).extracting(each -> each.sample().slot()).containsExactly(1, 2);
        Plan.Part mix = plan.parts().get(0);
        assertThat(mix.components().stream().map(Plan.Component::totalUl).toList())
                .usingElementComparator((one, other) -> Math.abs(one - other) < 1e-9 ? 0 : 1)
                .containsExactly(858.0, 171.6, 132.0, 488.4);
        assertThat(mix.totalUl()).isCloseTo(1650, within(1e-9));
        assertThat(plan.parts().get(1).totalUl()).isCloseTo(132, within(1e-9));
        PlannedStandard standard = plan.standards().get(0);
        assertThat(standard.takes().get(0).takeUl()).isCloseTo(40, within(1e-9));
        assertThat(standard.waterUl()).isCloseTo(960, within(1e-9));
    }

    /** 0.2 g/L from 100 g/L would be 2 µL in 1 mL; from the stock diluted 5 times it is 10 µL. */
    @Test
    void standardsTakeAPredilutionWhereTheStockIsTooStrong() throws InputException, IOException {
        AssayMethod malic = new MethodLibrary().find("l-malic-340").orElseThrow();
        Plan plan = Planner.plan(wanted(
                malic,
                layout(SMALL),
                planning(1000, 10, Map.of("L-malic acid", new Quantity(100, Unit.GRAM_PER_LITRE))),
                sample(1, "first", "0.2 g/L")));
        Plan.Take take = plan.standards().get(0).takes().get(0);
        assertThat(take.predilution()).isEqualTo(5);
        assertThat(take.takeUl()).isCloseTo(10, within(1e-9));
    }

    /** Lithium L-lactate 96.010 g/mol for 90.078 g/mol of acid, 98 % pure: 100 mL of 2 g/L take 0.2175 g. By hand. */
    @Test
    void stocksAreWeighedAsTheirSalt() throws InputException, IOException {
        AssayMethod lactic = new MethodLibrary().find("l-lactic-340").orElseThrow();
        Plan plan = Planner.plan(wanted(lactic, layout(SMALL), Planning.USUAL, sample(1, "first", "0.1 g/L")));
        Plan.Stock stock = plan.stocks().get(0);
        assertThat(stock.gPerL()).isEqualTo(2);
        assertThat(stock.weigh()).contains("0.2175 g of lithium L-lactate (98 %) to 100 mL of water");
    }

    @Test
    void earlierResultsServeAsExpectation() throws InputException, IOException {
        Planner.Wanted plain = wanted(method(MALIC_365), layout(SMALL), Planning.USUAL, sample(1, "Tank 7", ""));
        EarlierResult value = new EarlierResult(
                "Tank 7",
                "L-malic acid",
                Optional.of(tallywell.quantity.QuantityRange.parse("3.02 g/L", tallywell.quantity.Kind.CONCENTRATION)),
                Optional.empty());
        EarlierResult advice =
                new EarlierResult("Tank 7", "L-malic acid", Optional.empty(), Optional.of(new Dilution(50)));
        assertThat(factor(plain, value)).isEqualTo(20);
        assertThat(factor(plain, advice)).isEqualTo(50);
    }

    private static double factor(Planner.Wanted plain, EarlierResult earlier) throws InputException {
        return Planner.plan(new Planner.Wanted(
                        plain.name(),
                        "",
                        "",
                        plain.method(),
                        plain.layout(),
                        plain.samples(),
                        List.of(earlier),
                        plain.planning()))
                .samples()
                .get(0)
                .sample()
                .dilution()
                .factor();
    }

    /** Both sugars must be in range: 60 and 90 g/L at 200 are 0.3 and 0.45 g/L. */
    @Test
    void sequentialAssaysGetOneDilutionForAllAnalytes() throws InputException, IOException {
        AssayMethod sugars =
                new MethodLibrary().find("d-glucose-d-fructose-340").orElseThrow();
        Layout layout = layout(SMALL.replace("level: 0.2 g/L", "levels: {D-glucose: 0.4 g/L, D-fructose: 0.4 g/L}")
                .replace(
                        "a: {role",
                        "b: {role: standard, levels: {D-glucose: 0.05 g/L, D-fructose: 0.05 g/L}}\n  a: {role")
                .replace("A: o 1 2", "A: o 1 b"));
        Plan plan = Planner.plan(
                wanted(sugars, layout, Planning.USUAL, sample(1, "Must", "D-glucose: 30 g/L; D-fructose: 70 g/L")));
        assertThat(plan.samples().get(0).sample().dilution().factor()).isEqualTo(200);
    }

    @Test
    void moreSamplesThanSlots() throws InputException, IOException {
        Planner.Wanted many = wanted(
                method(MALIC_365),
                layout(SMALL),
                Planning.USUAL,
                sample(0, "a", "1 g/L"),
                sample(0, "b", "1 g/L"),
                sample(0, "c", "1 g/L"));
        assertThatThrownBy(() -> Planner.plan(many))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found 3 samples for the 2 slots of the layout 'small'; expected at most 2")
                .hasMessageContaining("put 1 into a second run");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            some | found 'some' as expected; expected a range such as 0.5-2 g/L
            0,5 g/L | write 0.5 g/L
            2-1 g/L | expected the lower end first
            citric acid: 1 g/L | found 'citric acid', which the method does not measure; expected L-malic acid
            900000 g/L | which no concentration here can be
            """)
    void whatIsExpectedMustBeUnderstood(String expected, String message) throws InputException, IOException {
        Planner.Wanted one = wanted(method(MALIC_365), layout(SMALL), Planning.USUAL, sample(1, "Tank", expected));
        assertThatThrownBy(() -> Planner.plan(one))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("list.csv, line 2")
                .hasMessageContaining(message);
    }

    /** Without a molar mass a standard in mmol/L has no level in g/L, and above all not the level 0. */
    @Test
    void standardsInAmountsNeedAMolarMass() throws InputException, IOException {
        String method = MALIC_365
                .replace(", molar-mass: 134.09 g/mol", "")
                .replace("calibration: {by: absorptivity}", "calibration: {by: standards, model: line}");
        Layout amounts = layout(SMALL.replace("0.2 g/L", "1.5 mmol/L"));
        Planner.Wanted wanted = wanted(method(method), amounts, Planning.USUAL, sample(1, "Tank", "1 g/L"));
        assertThatThrownBy(() -> Planner.plan(wanted))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(
                        "gives no molar mass of L-malic acid, but the standards need one (found 1.5 mmol/L)")
                .hasMessageContaining("expected 'formula' or 'molar-mass' under 'analyte'");
        Map<String, Quantity> stocks =
                Map.of("L-malic acid", Quantity.of(15, Unit.of("mmol/L").orElseThrow()));
        Planner.Wanted stock =
                wanted(method(method), layout(SMALL), planning(1000, 10, stocks), sample(1, "Tank", "1 g/L"));
        assertThatThrownBy(() -> Planner.plan(stock)).hasMessageContaining("(found 15 mmol/L)");
    }

    @Test
    void impossibleVolumesSayWhatWouldMakeThemPossible() throws InputException, IOException {
        AssayMethod malic = new MethodLibrary().find("l-malic-340").orElseThrow();
        Layout layout = layout(SMALL);
        Planner.Wanted small = wanted(malic, layout, Planning.USUAL, sample(1, "Tank", "1 g/L", OptionalDouble.of(5)));
        assertThatThrownBy(() -> Planner.plan(small))
                .hasMessageContaining("'Tank' is to be pipetted with 5 µL, less than the smallest volume of 10 µL")
                .hasMessageContaining("or a smaller 'pipette-least'");
        Planner.Wanted full = wanted(malic, layout, Planning.USUAL, sample(1, "Tank", "1 g/L", OptionalDouble.of(50)));
        assertThatThrownBy(() -> Planner.plan(full))
                .hasMessageContaining("the mix leaves room for 20 µL; the well would be overfilled by 30 µL");
        Planner.Wanted coarse = wanted(malic, layout, planning(100, 25, Map.of()), sample(1, "Tank", "900 g/L"));
        assertThatThrownBy(() -> Planner.plan(coarse)).hasMessageContaining("less than the smallest volume of 25 µL");
        Planner.Wanted far =
                wanted(method(MALIC_365), layout, planning(300, 60, Map.of()), sample(1, "Tank", "900 g/L"));
        assertThatThrownBy(() -> Planner.plan(far))
                .hasMessageContaining(
                        "'Tank' would need a dilution of 5000, which four steps with 60 µL in 300 µL do not reach")
                .hasMessageContaining("expected a larger 'dilute-to' or a smaller 'pipette-least'");
    }

    /** A method for 96 wells of 300 µL on a plate with 384 of 80 µL (own choices). */
    @Test
    void aMethodForLargerWellsIsRefused() throws InputException {
        AssayMethod malic = new MethodLibrary().find("l-malic-340").orElseThrow();
        Layout small = new LayoutReader().read(Path.of("plate-layouts/384-one-hundred-sixty-in-duplicate.yaml"));
        Planner.Wanted one = wanted(malic, small, Planning.USUAL, sample(1, "Tank", "1 g/L"));
        assertThatThrownBy(() -> Planner.plan(one))
                .hasMessageContaining(
                        "a well would hold 290 µL after the step 'L-malic acid', but a well of this plate takes 80 µL")
                .hasMessageContaining("'well-most' under 'planning'");
    }

    @Test
    void aWellThatCannotHoldItAllIsRefused() throws InputException, IOException {
        String deep = MALIC_365
                .replace("{beam: fixed, length: 1 cm}", "{beam: vertical, well-area: 33.2 mm2}")
                .replace("light-path", "well: {most: 2 mL}\nlight-path");
        Planner.Wanted one = wanted(method(deep), layout(SMALL), Planning.USUAL, sample(1, "Tank", "1 g/L"));
        assertThatThrownBy(() -> Planner.plan(one))
                .hasMessageContaining(
                        "a well would hold 2220 µL after the step 'L-malic acid', but a well of this plate takes 2000 µL");
    }
}
