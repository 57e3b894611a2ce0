package tallywell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.files.MethodLibrary;
import tallywell.method.AssayMethod;
import tallywell.method.LightPath;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.plan.WorkingRange;

/**
 * Every formula on the pages of the docs that people calculate by is evaluated as it stands there. The numbers stand in a
 * comment at the end of the page: the formula word for word, what its names are, and what comes out by hand.
 */
class FormulasOfTheDocsTest {
    private static final Pattern COMMENT = Pattern.compile("<!--(.*?)-->", Pattern.DOTALL);
    /** What looks like a formula: an equals sign, then arithmetic before the sentence ends. */
    private static final Pattern FORMULA = Pattern.compile("\\S = [^=;,|]{0,60}?( · |\\w / |√)");

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static String page(String name) throws IOException {
        return Files.readString(Path.of("docs", name + ".md"));
    }

    private static List<String[]> checks(String page) {
        List<String[]> checks = new ArrayList<>();
        Matcher comment = COMMENT.matcher(page);
        while (comment.find()) {
            comment.group(1)
                    .lines()
                    .map(line -> line.split(" \\| "))
                    .filter(parts -> parts.length == 3)
                    .forEach(checks::add);
        }
        return checks;
    }

    @ParameterizedTest
    @CsvSource({"formats, 23", "methods, 2", "uncertainty, 5", "verdicts, 4"})
    void formulasGiveWhatTheyShould(String name, int least) throws IOException {
        String page = page(name);
        String visible = plain(COMMENT.matcher(page).replaceAll(""));
        List<String[]> checks = checks(page);
        assertThat(checks).hasSizeGreaterThanOrEqualTo(least);
        for (String[] check : checks) {
            assertThat(visible).as(name).contains(plain(check[0]));
            String right = check[0].substring(check[0].lastIndexOf(" = ") + 1).replaceFirst("^= ", "");
            if (right.startsWith("baseline ")) {
                right = right.substring("baseline ".length());
            }
            double value = new Evaluation(right, bindings(check[1])).value();
            double wanted = Double.parseDouble(check[2].strip());
            assertThat(value)
                    .as(name + ": " + String.join(" | ", check))
                    .isCloseTo(wanted, org.assertj.core.data.Offset.offset(2e-6 * Math.abs(wanted) + 1e-15));
        }
    }

    /** A formula that nobody evaluates is how a plate was lost: none is left once the checked ones are taken away. */
    @ParameterizedTest
    @CsvSource({"formats, ## The arithmetic", "methods, #", "uncertainty, #", "verdicts, ## What is left"})
    void everyFormulaIsEvaluated(String name, String from) throws IOException {
        String page = page(name);
        String rest = plain(COMMENT.matcher(page.substring(page.indexOf(from))).replaceAll(""));
        for (String[] check : checks(page)) {
            rest = rest.replace(plain(check[0]), "…");
        }
        List<String> left = new ArrayList<>();
        Matcher formula = FORMULA.matcher(rest);
        while (formula.find()) {
            left.add(rest.substring(Math.max(0, formula.start() - 30), Math.min(rest.length(), formula.end() + 30)));
        }
        assertThat(left).isEmpty();
    }

    /** The factor of the page is the one that the program plans with, for every method. */
    @Test
    void factorOfThePageIsThatOfTheProgram() throws IOException, InputException {
        String formula = checks(page("methods")).get(0)[0];
        MethodLibrary library = new MethodLibrary();
        for (String id : library.ids()) {
            AssayMethod method = library.find(id).orElseThrow();
            for (Step step : method.steps()) {
                Map<String, Double> names = new LinkedHashMap<>();
                names.put("area", ((LightPath.Vertical) method.lightPath().orElseThrow()).wellAreaMm2());
                names.put("M", step.analyte().molarMass().orElseThrow());
                names.put("ε", step.signal().absorptivity().orElseThrow());
                names.put("v", step.volumes().orElseThrow().sampleUl());
                names.put("s", step.analyte().signalPerAnalyte());
                OptionalDouble factor = WorkingRange.of(method, step, java.util.Optional.empty())
                        .factor();
                assertThat(new Evaluation(formula.split(" = ")[1], names).value())
                        .as(id)
                        .isCloseTo(factor.orElseThrow(), org.assertj.core.data.Offset.offset(1e-9));
            }
        }
    }

    private static Map<String, Double> bindings(String text) {
        Map<String, Double> names = new LinkedHashMap<>();
        for (String each : text.split("; ")) {
            int at = each.strip().lastIndexOf(' ');
            names.put(
                    each.strip().substring(0, at),
                    Double.parseDouble(each.strip().substring(at + 1)));
        }
        return names;
    }

    /** Arithmetic as it is printed: · / + − powers, roots, brackets, and factors side by side; names may have blanks. */
    private static final class Evaluation {
        private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
        private final String text;
        private final List<Map.Entry<String, Double>> names;
        private int at;

        Evaluation(String text, Map<String, Double> names) {
            this.text = plain(text).strip();
            this.names = names.entrySet().stream()
                    .sorted(Comparator.comparingInt((Map.Entry<String, Double> each) ->
                                    each.getKey().length())
                            .reversed())
                    .toList();
        }

        double value() {
            double value = sum();
            assertThat(text.substring(at).strip()).as("rest of '" + text + "'").isEmpty();
            return value;
        }

        private boolean take(String token) {
            while (text.startsWith(" ", at)) {
                at++;
            }
            if (text.startsWith(token, at)) {
                at += token.length();
                return true;
            }
            return false;
        }

        private double sum() {
            double value = product();
            while (true) {
                if (take("+")) {
                    value += product();
                } else if (take("−")) {
                    value -= product();
                } else {
                    return value;
                }
            }
        }

        private double product() {
            double value = factor().orElseThrow(() -> new AssertionError("no number at '" + text.substring(at) + "'"));
            while (true) {
                if (take("/")) {
                    value /= factor().orElseThrow();
                } else {
                    boolean said = take("·");
                    OptionalDouble next = factor();
                    if (next.isEmpty()) {
                        assertThat(said)
                                .as("a factor after · in '" + text + "'")
                                .isFalse();
                        return value;
                    }
                    value *= next.getAsDouble();
                }
            }
        }

        private OptionalDouble factor() {
            OptionalDouble base = base();
            if (base.isEmpty()) {
                return base;
            }
            double value = base.getAsDouble();
            if (text.startsWith("²", at)) {
                at++;
                return OptionalDouble.of(value * value);
            }
            if (text.startsWith("⁴", at)) {
                at++;
                return OptionalDouble.of(value * value * value * value);
            }
            return OptionalDouble.of(value);
        }

        private OptionalDouble base() {
            if (take("√(")) {
                double inner = sum();
                assertThat(take(")")).as("bracket in '" + text + "'").isTrue();
                return OptionalDouble.of(Math.sqrt(inner));
            }
            for (Map.Entry<String, Double> each : names) {
                if (take(each.getKey())) {
                    return OptionalDouble.of(each.getValue());
                }
            }
            if (take("(")) {
                double inner = sum();
                assertThat(take(")")).as("bracket in '" + text + "'").isTrue();
                return OptionalDouble.of(inner);
            }
            Matcher number = NUMBER.matcher(text).region(at, text.length());
            if (number.lookingAt()) {
                at = number.end();
                return OptionalDouble.of(Double.parseDouble(number.group()));
            }
            return OptionalDouble.empty();
        }
    }
}
