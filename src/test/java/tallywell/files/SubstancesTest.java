package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.method.Hazard;
import tallywell.method.Reagent;

/** Which substances a method names, and what the table says of them. */
class SubstancesTest {
    /**
     * H and EUH statements of Regulation (EC) 1272/2008, Annex III: what each says, shortened to a word that the table must
     * use where it cites the number (from memory).
     */
    private static final List<String> STATEMENTS = List.of(
            "H224 extremely flammable",
            "H225 highly flammable",
            "H226 flammable",
            "H271 oxidiser",
            "H272 oxidiser",
            "H300 fatal if swallowed",
            "H301 toxic",
            "H302 harmful if swallowed",
            "H310 on the skin",
            "H311 toxic",
            "H314 corrosive",
            "H315 irritates skin",
            "H317 sensitises the skin",
            "H318 harms the eyes",
            "H319 eyes",
            "H331 toxic",
            "H335 airways",
            "H341 genetic defects",
            "H350 cause cancer",
            "H360D unborn child",
            "H410 harms waters",
            "EUH031 acid",
            "EUH032 gas with");

    private static List<String> named(String reagent, String holds) {
        return Substances.known().of(List.of(new Reagent(reagent, 20, Reagent.Into.MIX, 0, holds)), List.of()).stream()
                .map(Hazard::substance)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "buffer, 'TRIS, sodium azide 0.02 %', sodium azide",
        "clarified with Perchloric Acid, '', perchloric acid",
        "buffer, 'glycine, hydrazine 0.4 mol/L, pH 9', hydrazine",
        "Carrez, potassium hexacyanoferrate(II), hexacyanoferrate",
        "buffer, 'imidazole 0.1 mol/L', imidazole"
    })
    void substanceIsFoundWhereItIsNamed(String reagent, String holds, String substance) {
        assertThat(named(reagent, holds)).containsExactly(substance);
    }

    @ParameterizedTest
    @CsvSource({
        "buffer, 'triethanolamine 0.15 mol/L, magnesium sulfate'",
        "methanolate, acetaldehydes",
        "adenosine triphosphate, nitrate reductase"
    })
    void partOfAnotherWordIsNotASubstance(String reagent, String holds) {
        assertThat(named(reagent, holds)).isEmpty();
    }

    static Stream<Hazard> all() {
        return Stream.of(
                        "sodium azide, perchloric acid, trichloroacetic acid, hydrazine, hexacyanoferrate, zinc sulfate",
                        "imidazole, polyoxyethylene octylphenyl ether, iodonitrotetrazolium chloride, ethanol, acetaldehyde",
                        "acetic acid, sodium sulfite, potassium nitrate, diphosphate, sodium hydroxide, sulfuric acid")
                .flatMap(each ->
                        Substances.known()
                                .of(List.of(new Reagent("all", 1, Reagent.Into.MIX, 0, each)), List.of())
                                .stream());
    }

    @Test
    void seventeenSubstancesAreKnown() {
        assertThat(all()).hasSize(17);
    }

    @ParameterizedTest
    @MethodSource("all")
    void everyStatementCitedIsSaidAndHasASource(Hazard hazard) {
        assertThat(hazard.source()).isNotBlank();
        assertThat(hazard.precaution()).endsWith(".");
        java.util.regex.Pattern.compile("E?U?H\\d{3}D?")
                .matcher(hazard.words())
                .results()
                .map(java.util.regex.MatchResult::group)
                .forEach(number -> assertThat(STATEMENTS)
                        .as(hazard.substance() + " cites " + number)
                        .filteredOn(each -> each.startsWith(number + " "))
                        .singleElement()
                        .satisfies(each -> assertThat(hazard.words()).contains(each.substring(number.length() + 1))));
    }

    /** The methods as they come: what stands on their bench sheets. */
    @ParameterizedTest
    @CsvSource({
        "acetaldehyde-340, acetaldehyde",
        "ethanol-340, ethanol",
        "sulfite-340, sulfite",
        "l-glutamic-492, iodonitrotetrazolium chloride"
    })
    void builtInMethodsNameTheirSubstances(String method, String substance) throws Exception {
        assertThat(new MethodLibrary().find(method).orElseThrow().bench().hazards())
                .extracting(Hazard::substance)
                .contains(substance);
    }

    /** Sodium acetate is what is weighed, not acetic acid. */
    @Test
    void whatIsWeighedCountsAndNotTheAnalyte() throws Exception {
        assertThat(new MethodLibrary()
                        .find("acetic-coupled-340")
                        .orElseThrow()
                        .bench()
                        .hazards())
                .isEmpty();
    }
}
