package tallywell;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.text.DecimalFormat;
import java.text.NumberFormat;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the compiled classes to the package table in DEVELOPERS.md. */
class ArchitectureTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("tallywell");

    /** Package, then the packages of ours that it may import. */
    private static final String ALLOWED = """
            quantity |
            notice   |
            numeric  |
            plate    | quantity
            method   | quantity plate
            table    | notice
            files    | quantity notice plate method table
            readings | quantity notice plate table
            trace    | quantity numeric
            curve    | quantity numeric
            workup   | quantity notice numeric plate method trace curve
            budget   | quantity notice numeric plate method curve workup
            assess   | quantity notice numeric plate method curve workup budget
            across   | quantity notice numeric plate method curve workup budget assess
            plan     | quantity notice plate method
            statement | quantity notice plate method workup budget assess across
            chart    | quantity plate trace curve workup assess
            report   | quantity notice plate method trace curve workup budget assess plan across statement
            paper    | quantity notice plate method trace curve workup budget assess plan chart report statement
            recheck  | notice report
            exchange | quantity notice numeric plate method trace curve workup budget assess report statement
            task     | quantity notice plate method table files readings trace curve workup budget assess plan chart report paper recheck exchange across statement
            desk     | quantity notice plate method table files readings trace curve workup budget assess plan chart report paper recheck exchange across statement task
            cli      | notice task
            gui      | quantity notice plate method trace curve workup assess readings chart statement task desk
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "-", emptyValue = "", textBlock = ALLOWED)
    void packageImportsOnlyWhatTheTableAllows(String name, String allowed) {
        String[] ours = Stream.concat(Stream.of(name), words(allowed))
                .map(each -> "tallywell." + each + "..")
                .toArray(String[]::new);
        classes()
                .that()
                .resideInAPackage("tallywell." + name + "..")
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage("tallywell..")).or(resideInAnyPackage(ours)))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @Test
    void everyPackageIsInTheTable() {
        assertThat(ALLOWED.lines().map(line -> line.split("[ |]")[0]))
                .containsAll(CLASSES.stream()
                        .map(each -> each.getPackageName().replaceFirst("^tallywell[.]?", ""))
                        .map(each -> each.replaceFirst("[.].*", ""))
                        .filter(each -> !each.isEmpty())
                        .toList());
    }

    /** Library, then the only packages of ours that may see it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            javax.swing..                 | gui
            java.awt..                    | gui chart paper
            org.jfree..                   | gui chart
            org.apache.batik..            | chart
            org.apache.poi..              | table report recheck
            org.apache.commons.csv..      | table report
            org.snakeyaml..               | files
            org.hipparchus..              | numeric
            org.apache.pdfbox..           | paper
            org.apache.fontbox..          | paper
            de.rototor..                  | paper
            com.fasterxml.jackson..       | exchange
            picocli..                     | cli
            """)
    void libraryStaysInItsPackages(String library, String owners) {
        noClasses()
                .that()
                .resideOutsideOfPackages(
                        words(owners).map(each -> "tallywell." + each + "..").toArray(String[]::new))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .check(CLASSES);
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching("tallywell.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void onlyTheCommandLinePrints() {
        noClasses()
                .that()
                .resideOutsideOfPackages("tallywell", "tallywell.cli..")
                .should(ACCESS_STANDARD_STREAMS)
                .check(CLASSES);
    }

    @Test
    void textIsMadeWithAnExplicitLocale() {
        noClasses()
                .should()
                .callMethod(String.class, "format", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "formatted", Object[].class)
                .orShould()
                .callConstructor(DecimalFormat.class, String.class)
                .orShould()
                .callMethod(NumberFormat.class, "getInstance")
                .orShould()
                .callMethod(DateTimeFormatter.class, "ofPattern", String.class)
                .because("a report must not change with the language of the machine")
                .check(CLASSES);
    }

    @Test
    void timeComesFromOutside() {
        noClasses()
                .that()
                .resideOutsideOfPackages("tallywell.task..", "tallywell.desk..", "tallywell.gui..", "tallywell.cli..")
                .should()
                .callMethod(Instant.class, "now")
                .because("the same inputs give the same bytes")
                .check(CLASSES);
    }

    @Test
    void nothingBelowTheFrontEndsChangesAfterItIsMade() {
        classes()
                .that()
                .resideInAnyPackage(
                        "tallywell.quantity..", "tallywell.plate..", "tallywell.method..", "tallywell.curve..")
                .and()
                .arePublic()
                .should()
                .haveOnlyFinalFields()
                .allowEmptyShould(true)
                .check(CLASSES);
        fields().that().areStatic().should().beFinal().allowEmptyShould(true).check(CLASSES);
    }

    private static Stream<String> words(String text) {
        return text == null ? Stream.of() : Stream.of(text.split(" ")).filter(each -> !each.isEmpty());
    }
}
