package tallywell.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.Published;
import tallywell.files.MethodLibrary;
import tallywell.notice.InputException;

/** The methods that come with the program: chemistry, volumes, sources. */
class BuiltInMethodsTest {
    private static final Pattern ATOM = Pattern.compile("([A-Z][a-z]?)(\\d*)");
    private static final MethodLibrary LIBRARY = new MethodLibrary();

    static Stream<String> ids() {
        return LIBRARY.ids().stream();
    }

    private static AssayMethod method(String id) throws InputException {
        return LIBRARY.find(id).orElseThrow();
    }

    private static List<Chemistry> chemistries(AssayMethod method) {
        List<Chemistry> all = new ArrayList<>();
        method.steps().forEach(step -> all.add(step.chemistry()));
        method.differences().forEach(each -> all.add(each.chemistry()));
        return all;
    }

    /** Elements and charge, counted here from the text of each formula: nothing comes from nothing. */
    @ParameterizedTest
    @MethodSource("ids")
    void reactionsBalanceInElementsAndCharge(String id) throws InputException {
        for (Chemistry chemistry : chemistries(method(id))) {
            assertThat(chemistry.reactions()).as(id).isNotEmpty();
            for (Reaction reaction : chemistry.reactions()) {
                Map<String, Integer> sum = new TreeMap<>();
                for (Map.Entry<String, Integer> each : reaction.net().entrySet()) {
                    Species species = chemistry.species(each.getKey()).orElseThrow();
                    Matcher atom = ATOM.matcher(species.formula().text());
                    while (atom.find()) {
                        int atoms = atom.group(2).isEmpty() ? 1 : Integer.parseInt(atom.group(2));
                        sum.merge(atom.group(1), each.getValue() * atoms, Integer::sum);
                    }
                    sum.merge("charge", each.getValue() * species.charge(), Integer::sum);
                }
                assertThat(sum.values())
                        .as(id + ": " + reaction.text() + " " + sum)
                        .containsOnly(0);
            }
        }
    }

    /**
     * Signal molecules for each molecule of analyte, counted from the sum of the reactions; positive where they come up.
     * The schemes are textbook chemistry, from memory.
     */
    @ParameterizedTest
    @CsvSource({
        "l-lactic-340, L-lactic acid, NADH, 1",
        "d-lactic-340, D-lactic acid, NADH, 1",
        "l-malic-340, L-malic acid, NADH, 1",
        "citric-340, citric acid, NADH, -1",
        "acetic-340, acetic acid, NADH, -1",
        "acetic-coupled-340, acetic acid, NADH, 1",
        "succinic-340, succinic acid, NADH, -1",
        "d-gluconic-340, D-gluconic acid, NADPH, 1",
        "d-glucose-d-fructose-340, D-glucose, NADPH, 1",
        "d-glucose-d-fructose-340, D-fructose, NADPH, 1",
        "sucrose-340, D-glucose, NADPH, 1",
        "lactose-galactose-340, D-galactose, NADH, 1",
        "ethanol-340, ethanol, NADH, 2",
        "acetaldehyde-340, acetaldehyde, NADH, 1",
        "glycerol-340, glycerol, NADH, -1",
        "ammonia-340, ammonia, NADH, -1",
        "ammonia-urea-340, ammonia, NADH, -1",
        "ammonia-urea-340, urea, NADH, -2",
        "l-glutamic-492, L-glutamic acid, formazan, 1",
        "sulfite-340, sulfur dioxide, NADH, -1",
        "nitrate-340, nitrate, NADPH, -1"
    })
    void signalFollowsFromTheReactions(String id, String analyte, String signal, int count) throws InputException {
        Step step = method(id).steps().stream()
                .filter(each -> each.analyte().name().equals(analyte))
                .findFirst()
                .orElseThrow();
        Map<String, Integer> net = step.chemistry().net();
        assertThat(net.getOrDefault(signal, 0) / -(double) net.getOrDefault(analyte, 0))
                .isEqualTo(count);
        assertThat(step.signal().species()).isEqualTo(signal);
        assertThat(step.signal().direction().sign() * step.analyte().signalPerAnalyte())
                .isEqualTo(count);
    }

    /** One disaccharide makes one molecule of what is measured. */
    @ParameterizedTest
    @CsvSource({"sucrose-340, sucrose, D-glucose", "lactose-galactose-340, lactose, D-galactose"})
    void hydrolysisReleasesOneSugar(String id, String sugar, String measured) throws InputException {
        Difference difference = method(id).differences().get(0);
        assertThat(difference.analyte().name()).isEqualTo(sugar);
        assertThat(difference.chemistry().yieldOf(measured, sugar)).contains(1.0);
        assertThat(difference.released()).isEqualTo(1);
    }

    /** Table molar_masses.csv, from the IUPAC/CIAAW abridged atomic weights 2021. */
    @ParameterizedTest
    @MethodSource("ids")
    void molarMassesOfTheAnalytesAreThoseOfTheTable(String id) throws InputException {
        Published table = Published.read("analyte_molar_masses");
        AssayMethod method = method(id);
        List<Analyte> analytes = new ArrayList<>();
        method.steps().forEach(step -> analytes.add(step.analyte()));
        method.differences().forEach(each -> analytes.add(each.analyte()));
        for (Analyte analyte : analytes) {
            Published row = table.where("analyte", analyte.name());
            assertThat(row.size()).as(analyte.name()).isEqualTo(1);
            row.check(analyte.name(), analyte.molarMass().orElseThrow(), row.number(0, "g_per_mol"), 5);
        }
    }

    /** Molar masses of the cofactors as handbooks and catalogues print them (from memory), protonated forms. */
    @ParameterizedTest
    @CsvSource({
        "NAD+, 664.4",
        "NADH, 665.4",
        "NADP+, 744.4",
        "NADPH, 745.4",
        "ATP, 507.2",
        "ADP, 427.2",
        "AMP, 347.2",
        "ITP, 508.2",
        "IDP, 428.2",
        "CoA, 767.5",
        "acetyl-CoA, 809.6",
        "succinyl-CoA, 867.6",
        "phosphate, 98.0",
        "diphosphate, 178.0",
        "phosphoenolpyruvate, 168.0",
        "pyruvic acid, 88.06",
        "oxaloacetic acid, 132.07",
        "2-oxoglutaric acid, 146.10",
        "L-glutamic acid, 147.13",
        "L-alanine, 89.09",
        "L-aspartic acid, 133.10"
    })
    void cofactorsHaveTheirMolarMass(String name, double gPerMol) {
        assertThat(Species.known(name).orElseThrow().formula().molarMass()).isCloseTo(gPerMol, within(0.06));
    }

    /** Nothing below 10 µL is pipetted, no well holds more than it may, and all parts come to the whole. */
    @ParameterizedTest
    @MethodSource("ids")
    void volumesCanBePipetted(String id) throws InputException {
        AssayMethod method = method(id);
        double sum = method.steps().get(0).volumes().orElseThrow().sampleUl();
        for (Reagent reagent : method.bench().reagents()) {
            assertThat(reagent.volumeUl()).as(id + ": " + reagent.name()).isGreaterThanOrEqualTo(10);
            sum += reagent.volumeUl();
        }
        double last = method.steps()
                .get(method.steps().size() - 1)
                .volumes()
                .orElseThrow()
                .afterTriggerUl();
        assertThat(sum).isCloseTo(last, within(1e-9));
        assertThat(last).isLessThanOrEqualTo(method.bench().wellUl().orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("ids")
    void sourceSaysWhatIsPublishedRememberedAndChosen(String id) throws InputException {
        assertThat(method(id).source())
                .contains("Published:")
                .contains("From memory:")
                .contains("Own choice:")
                .contains("Verify the reaction time with a standard");
        assertThat(method(id).cautions()).anyMatch(caution -> caution.contains("azide"));
    }

    /** Horecker and Kornberg's absorptivity is a setting: the methods take that of the OIV, 6300 L/mol/cm. */
    @Test
    void absorptivityOfTheNicotinamidesIsThatOfTheOivMethods() throws InputException {
        for (String id : LIBRARY.ids()) {
            for (Step step : method(id).steps()) {
                if (step.signal().species().startsWith("NAD")) {
                    assertThat(step.signal().absorptivity()).as(id).hasValue(6300);
                }
            }
        }
    }
}
