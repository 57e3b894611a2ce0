package tallywell.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.files.MethodLibrary;
import tallywell.notice.InputException;

/**
 * The recipes of the built-in methods against their own windows, dilutions and text, by the law of Lambert and Beer on a
 * plate read from above: A = ε · n / area. Amounts are read from the words of the recipes, as a person would.
 */
class RecipesTest {
    private static final MethodLibrary LIBRARY = new MethodLibrary();

    /** What the program takes for plate and reagents, and wants left, where a method says nothing: docs/verdicts.md. */
    private static final double BACKGROUND = 0.150;

    private static final double LEFT = 0.200;
    private static final Pattern DEMANDED =
            Pattern.compile("([0-9.]+) nmol make ([0-9.]+), .* at least ([0-9.]+[0-9])");

    static Stream<String> ids() {
        return LIBRARY.ids().stream();
    }

    private static AssayMethod method(String id) throws InputException {
        return LIBRARY.find(id).orElseThrow();
    }

    private static double areaMm2(AssayMethod method) {
        return ((LightPath.Vertical) method.lightPath().orElseThrow()).wellAreaMm2();
    }

    /** nmol in a well: volume in µL times mmol/L, summed over the reagents that hold the substance. */
    private static OptionalDouble nmol(AssayMethod method, String substance) {
        Pattern held = Pattern.compile("(?:^|[ ,])" + Pattern.quote(substance) + " ([0-9.]+) (µmol|mmol|mol)/L");
        double sum = 0;
        for (Reagent reagent : method.bench().reagents()) {
            Matcher found = held.matcher(reagent.holds());
            while (found.find()) {
                double milli =
                        found.group(2).equals("mol") ? 1000 : found.group(2).equals("mmol") ? 1 : 0.001;
                sum += Double.parseDouble(found.group(1)) * milli * reagent.volumeUl();
            }
        }
        return sum > 0 ? OptionalDouble.of(sum) : OptionalDouble.empty();
    }

    /** nmol over mm² is 10⁻⁹ mol over 10⁻² cm², times 1000 cm³/L: 10⁻⁴ · ε · n / area. */
    private static double absorbance(AssayMethod method, double nmol) {
        return 1e-4 * method.steps().get(0).signal().absorptivity().orElseThrow() * nmol / areaMm2(method);
    }

    /** 60 nmol of NADH in 33.2 mm²: 60 / 33.2 = 1.8072 nmol/mm²; times 6300 · 10⁻⁴ is 1.139. By hand. */
    @Test
    void absorbanceByHand() throws InputException {
        assertThat(absorbance(method("acetic-340"), 60)).isCloseTo(1.1386, within(1e-4));
    }

    private static double windows(AssayMethod method) {
        return method.steps().stream()
                .mapToDouble(step -> step.limits().deltaAMost().orElseThrow()
                        + step.limits().blankDeltaAMost().orElseThrow())
                .sum();
    }

    /** All windows, all blanks and what must be left fit into the indicator, whatever the plate; the text says the same. */
    @ParameterizedTest
    @MethodSource("ids")
    void windowsLieWithinTheIndicator(String id) throws InputException {
        AssayMethod method = method(id);
        Signal signal = method.steps().get(0).signal();
        if (signal.direction() == Direction.FALLS) {
            double nmol = nmol(method, signal.species()).orElseThrow();
            double supplied = absorbance(method, nmol);
            // Polystyrene read 0.04 or more; the bound takes 0.15 for it.
            assertThat(supplied + 0.04).as(id).isGreaterThanOrEqualTo(windows(method) + LEFT + BACKGROUND);
            assertThat(supplied + BACKGROUND)
                    .as(id)
                    .isLessThan(method.steps().get(0).limits().absorbanceMost().orElseThrow());
            Matcher said = DEMANDED.matcher(method.source());
            assertThat(said.find()).as(id).isTrue();
            assertThat(Double.parseDouble(said.group(1))).as(id).isEqualTo(nmol, within(1e-9));
            assertThat(Double.parseDouble(said.group(2))).as(id).isEqualTo(supplied, within(0.005));
            assertThat(Double.parseDouble(said.group(3)))
                    .as(id)
                    .isEqualTo(windows(method) + LEFT + BACKGROUND, within(0.005))
                    .isLessThanOrEqualTo(supplied + 0.04);
            return;
        }
        String taken =
                signal.species().equals("formazan") ? "NAD" : signal.species().replace("H", "");
        assertThat(absorbance(method, nmol(method, taken).orElseThrow())).as(id).isGreaterThan(windows(method));
    }

    /** What the coupled method says of NAD and L-malate in the well is what its reagents bring. */
    @Test
    void coupledReactantsAreThoseOfTheRecipe() throws InputException {
        AssayMethod method = method("acetic-coupled-340");
        Step step = method.steps().get(0);
        double ul = step.volumes().orElseThrow().afterTriggerUl();
        assertThat(step.reactants().mmolPerL().get(0))
                .isCloseTo(nmol(method, "NAD").orElseThrow() / ul, within(0.0005));
        assertThat(step.reactants().mmolPerL().get(1))
                .isCloseTo(nmol(method, "L-malate").orElseThrow() / ul, within(0.0005));
        // 360 nmol in 33.2 mm² at 6300: 6.831, whatever the volume.
        assertThat(step.reactantAbsorbances(method.lightPath()).get(0)).isCloseTo(6.831, within(0.003));
    }

    /** Formazan comes from tetrazolium: twice the window of it. Molar mass 505.7 g/mol (catalogues, from memory). */
    @Test
    void tetrazoliumSuffices() throws InputException {
        AssayMethod method = method("l-glutamic-492");
        Reagent dye = method.bench().reagents().stream()
                .filter(each -> each.name().contains("tetrazolium"))
                .findFirst()
                .orElseThrow();
        Matcher held = Pattern.compile("([0-9.]+) mmol/L \\(([0-9.]+) mg/mL\\)").matcher(dye.holds());
        assertThat(held.find()).isTrue();
        double millimolar = Double.parseDouble(held.group(1));
        assertThat(millimolar * 505.7 / 1000).isCloseTo(Double.parseDouble(held.group(2)), within(0.005));
        assertThat(absorbance(method, millimolar * dye.volumeUl())).isGreaterThan(2 * windows(method));
    }

    /** Nothing but the indicator may run out first, magnesium holds the nucleotides, and kinases have their potassium. */
    @ParameterizedTest
    @MethodSource("ids")
    void otherReactantsExceedTheIndicator(String id) throws InputException {
        AssayMethod method = method(id);
        double most = windows(method)
                * areaMm2(method)
                / (1e-4 * method.steps().get(0).signal().absorptivity().orElseThrow());
        for (String reactant :
                List.of("ATP", "ITP", "phosphoenolpyruvate", "2-oxoglutarate", "L-glutamate", "L-malate")) {
            nmol(method, reactant)
                    .ifPresent(nmol -> assertThat(nmol).as(id + ": " + reactant).isGreaterThan(1.5 * most));
        }
        double nucleotides = nmol(method, "ATP").orElse(0) + nmol(method, "ITP").orElse(0);
        double magnesium = nmol(method, "magnesium chloride").orElse(0)
                + nmol(method, "magnesium sulfate").orElse(0);
        assertThat(magnesium).as(id).isGreaterThanOrEqualTo(nucleotides);
        boolean kinase =
                method.bench().reagents().stream().anyMatch(each -> each.name().contains("pyruvate kinase"));
        boolean aldehyde =
                method.bench().reagents().stream().anyMatch(each -> each.name().contains("aldehyde dehydrogenase"));
        double potassium = nmol(method, "potassium chloride").orElse(0)
                + 4 * nmol(method, "potassium diphosphate").orElse(0);
        double volume = method.steps().get(0).volumes().orElseThrow().afterTriggerUl();
        if (kinase || aldehyde) {
            // 50 mmol/L or more (textbooks of enzymology, from memory).
            assertThat(potassium / volume).as(id).isGreaterThanOrEqualTo(50);
        }
    }

    /**
     * Both ends of every usual content at its dilution: the upper one in the window of every step; the lower one in that of
     * a step, too, unless there is nothing left to dilute less. Of halves the upper end only: what is free may be as little as it will.
     */
    @ParameterizedTest
    @MethodSource("ids")
    void usualDilutionsEndInsideTheWindow(String id) throws InputException {
        AssayMethod method = method(id);
        for (Bench.Usual usual : method.bench().dilutions()) {
            double factor = usual.dilution().factor();
            boolean low = false;
            for (Step step : method.steps()) {
                // Of methods by difference the contents are those of the analyte that is measured, half by half.
                double mass = step.analyte().molarMass().orElseThrow();
                double ul = step.volumes().orElseThrow().sampleUl();
                double perGram = 1e6 * ul / mass / 1000 * step.analyte().signalPerAnalyte();
                double most = absorbance(method, usual.content().high() / factor * perGram);
                double least = absorbance(method, usual.content().low() / factor * perGram);
                assertThat(most)
                        .as(id + ": " + usual)
                        .isLessThanOrEqualTo(step.limits().deltaAMost().orElseThrow());
                low |= least >= step.limits().deltaALeast().orElseThrow();
            }
            assertThat(low || factor == 1 || !method.differences().isEmpty())
                    .as(id + ": " + usual)
                    .isTrue();
        }
    }

    /** Dilutions of published suspensions: volume scaled to the well, made up to what is pipetted. */
    @Test
    void enzymesOfPublishedMethodsAreScaledToTheWell() throws InputException {
        // Published volume of enzyme over the whole, in mL, from memory; whole of the well in µL.
        check("l-lactic-340", "transaminase", 0.02 / 2.24, 290);
        check("l-lactic-340", "L-lactate dehydrogenase", 0.02 / 2.24, 290);
        check("d-lactic-340", "transaminase", 0.02 / 2.29, 290);
        check("d-lactic-340", "D-lactate dehydrogenase", 0.05 / 2.29, 290);
        check("l-malic-340", "transaminase", 0.01 / 2.22, 290);
        check("l-malic-340", "L-malate dehydrogenase", 0.01 / 2.22, 290);
        check("citric-340", "citrate lyase", 0.02 / 3.14, 290);
        check("d-glucose-d-fructose-340", "hexokinase", 0.02 / 2.92, 240);
        check("d-glucose-d-fructose-340", "isomerase", 0.02 / 2.94, 260);
    }

    private static void check(String id, String enzyme, double part, double wholeUl) throws InputException {
        Reagent reagent = method(id).bench().reagents().stream()
                .filter(each -> each.name().contains(enzyme))
                .findFirst()
                .orElseThrow();
        Matcher times = Pattern.compile("in ([0-9.]+) times its volume").matcher(reagent.holds());
        assertThat(times.find()).as(id + ": " + reagent).isTrue();
        double made = reagent.volumeUl() / (part * wholeUl);
        assertThat(Double.parseDouble(times.group(1))).as(id + ": " + enzyme).isCloseTo(made, within(0.03 * made));
    }

    /** Cautions that a chemist would miss. */
    @ParameterizedTest
    @MethodSource("ids")
    void cautionsNameWhatMustNotMeet(String id) throws InputException {
        AssayMethod method = method(id);
        String cautions = String.join(" ", method.cautions());
        assertThat(cautions).contains("Local rules").contains("azide").contains("Not for diagnosis");
        if (cautions.contains("perchloric acid: ")) {
            assertThat(cautions)
                    .contains("Never heat or dry the extracts")
                    .contains("Never perchloric acid and hexacyanoferrate in one preparation");
        }
        boolean acid =
                method.bench().reagents().stream().anyMatch(each -> each.holds().contains("pH 4.6"));
        assertThat(cautions.contains("must be free of azide")).isEqualTo(acid);
    }
}
