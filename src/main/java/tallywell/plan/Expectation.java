package tallywell.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tallywell.method.AssayMethod;
import tallywell.method.Bench;
import tallywell.method.Difference;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.method.Treatment;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.QuantityRange;

/**
 * What is expected of a sample, by analyte; "" stands for whichever analyte.
 *
 * @param byAnalyte content of the original sample
 * @param usual dilution that the method suggests, where the content is of something it measures only by difference
 */
record Expectation(Map<String, QuantityRange> byAnalyte, Optional<Dilution> usual) {
    private static final Pattern NAMED = Pattern.compile("(.*?)\\s*:\\s*(\\S.*)");

    Expectation {
        byAnalyte = Map.copyOf(byAnalyte);
    }

    /**
     * Reads {@code 0.5-2 g/L}, {@code D-glucose: 10 g/L; D-fructose: 20 g/L}, or a kind of sample that the method names. Of a
     * half of a difference the analyte that follows may be named, too: its total holds what is free and what is released.
     *
     * @throws IllegalArgumentException with a message for the user if the text is none of them
     */
    static Expectation parse(String text, AssayMethod method, Treatment treatment) {
        Optional<Expectation> kind = kind(text, method, treatment);
        if (kind.isPresent()) {
            return kind.get();
        }
        if (!text.matches(".*\\d.*")) {
            throw new IllegalArgumentException("found '" + text + "' as expected; expected a range such as 0.5-2 g/L"
                    + (method.bench().dilutions().isEmpty()
                            ? ""
                            : ", or a kind of sample that the method knows: "
                                    + String.join(
                                            ", ",
                                            method.bench().dilutions().stream()
                                                    .map(Bench.Usual::matrix)
                                                    .distinct()
                                                    .toList())));
        }
        Map<String, QuantityRange> ranges = new HashMap<>();
        for (String part : text.split(";")) {
            Matcher named = NAMED.matcher(part.strip());
            String name = named.matches() ? named.group(1) : "";
            List<String> known = known(method, treatment);
            if (!name.isEmpty() && !known.contains(name)) {
                throw new IllegalArgumentException("found '" + name + "', which the method does not measure; expected "
                        + String.join(", ", known));
            }
            ranges.put(
                    name,
                    QuantityRange.parse(
                            named.matches() ? named.group(2) : part,
                            Kind.CONCENTRATION,
                            Kind.AMOUNT_CONCENTRATION,
                            Kind.CONTENT));
        }
        if (treatment != Treatment.NONE) {
            method.differences().forEach(each -> released(each, method, treatment, ranges));
        }
        return new Expectation(ranges, Optional.empty());
    }

    private static List<String> known(AssayMethod method, Treatment treatment) {
        Stream<String> measured =
                method.steps().stream().map(step -> step.analyte().name());
        Stream<String> following = treatment == Treatment.NONE
                ? Stream.empty()
                : method.differences().stream().map(each -> each.analyte().name());
        return Stream.concat(measured, following).toList();
    }

    /** A kind of sample that the method names: the row of the half first, then one of either. */
    private static Optional<Expectation> kind(String text, AssayMethod method, Treatment treatment) {
        List<Bench.Usual> rows = method.bench().dilutions().stream()
                .filter(each -> each.matrix().equalsIgnoreCase(text.strip()))
                .toList();
        // A sample that is no half of a difference holds what a total may.
        Treatment half = treatment == Treatment.NONE ? Treatment.TOTAL : treatment;
        for (Treatment wanted : List.of(half, Treatment.NONE)) {
            for (Bench.Usual row : rows) {
                if (row.treatment() == wanted) {
                    return Optional.of(
                            method.differences().isEmpty() || wanted != Treatment.NONE
                                    ? new Expectation(Map.of("", row.content()), Optional.empty())
                                    : new Expectation(Map.of(), Optional.of(row.dilution())));
                }
            }
        }
        return Optional.empty();
    }

    /** Puts what is released from the analyte that follows to what is free of the one that is measured. */
    private static void released(
            Difference rule, AssayMethod method, Treatment treatment, Map<String, QuantityRange> ranges) {
        QuantityRange product = ranges.remove(rule.analyte().name());
        if (product == null || treatment == Treatment.FREE) {
            return;
        }
        Step step = method.steps().stream()
                .filter(each -> each.analyte().name().equals(rule.of()))
                .findFirst()
                .orElseThrow();
        double factor = rule.released() * rule.yield();
        if (product.unit().kind() != Kind.AMOUNT_CONCENTRATION) {
            factor *= step.analyte().molarMass().orElseThrow()
                    / rule.analyte().molarMass().orElseThrow();
        }
        QuantityRange free = ranges.get(rule.of());
        if (free != null && free.unit() != product.unit()) {
            throw new IllegalArgumentException("found " + free + " of " + rule.of() + " and " + product + " of "
                    + rule.analyte().name() + "; expected both in one unit, so that they can be added");
        }
        double low = factor * product.low() + (free == null ? 0 : free.low());
        double high = factor * product.high() + (free == null ? 0 : free.high());
        ranges.put(rule.of(), new QuantityRange(low, high, product.unit()));
    }

    Optional<QuantityRange> of(String analyte) {
        QuantityRange own = byAnalyte.get(analyte);
        return Optional.ofNullable(own != null ? own : byAnalyte.get(""));
    }

    /**
     * Concentration in g/L of the liquid that is diluted: the sample itself, or the extract of a solid.
     *
     * @throws IllegalArgumentException with a message for the user if a mass, density or molar mass is missing
     */
    static double gPerL(double value, QuantityRange range, Sample sample, Step step) {
        double base = value * range.unit().factor();
        return switch (range.unit().kind()) {
            case CONCENTRATION -> base;
            case AMOUNT_CONCENTRATION ->
                base
                        * step.analyte()
                                .molarMass()
                                .orElseThrow(() -> missing(range, sample, "the molar mass in the method"))
                        / 1000;
            default -> {
                // 1 g/100 g is 0.01 g in each g weighed in.
                if (sample.solid().isPresent()) {
                    Sample.Extraction solid = sample.solid().get();
                    yield base / 100 * solid.massG() / solid.extractMl() * 1000;
                }
                yield base
                        * 10
                        * sample.densityGPerMl()
                                .orElseThrow(() -> missing(range, sample, "'mass_g' and 'extract_mL', or a density"));
            }
        };
    }

    private static IllegalArgumentException missing(QuantityRange range, Sample sample, String what) {
        return new IllegalArgumentException("found " + range + " expected of '" + sample.name() + "', which needs "
                + what + " to become a concentration; expected it, or a range in g/L");
    }
}
