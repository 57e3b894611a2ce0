package tallywell.plan;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.method.AssayMethod;
import tallywell.method.Bench;
import tallywell.method.Sample;
import tallywell.method.Step;
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
     * Reads {@code 0.5-2 g/L}, {@code D-glucose: 10 g/L; D-fructose: 20 g/L}, or a kind of sample that the method names.
     *
     * @throws IllegalArgumentException with a message for the user if the text is none of them
     */
    static Expectation parse(String text, AssayMethod method) {
        Map<String, QuantityRange> ranges = new HashMap<>();
        for (Bench.Usual usual : method.bench().dilutions()) {
            if (usual.matrix().toLowerCase(Locale.ROOT).equals(text.strip().toLowerCase(Locale.ROOT))) {
                return method.differences().isEmpty()
                        ? new Expectation(Map.of("", usual.content()), Optional.empty())
                        : new Expectation(Map.of(), Optional.of(usual.dilution()));
            }
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
                                                    .toList())));
        }
        for (String part : text.split(";")) {
            Matcher named = NAMED.matcher(part.strip());
            String name = named.matches() ? named.group(1) : "";
            boolean known = name.isEmpty()
                    || method.steps().stream()
                            .anyMatch(step -> step.analyte().name().equals(name));
            if (!known) {
                throw new IllegalArgumentException("found '" + name + "', which the method does not measure; expected "
                        + String.join(
                                ", ",
                                method.steps().stream()
                                        .map(step -> step.analyte().name())
                                        .toList()));
            }
            ranges.put(
                    name,
                    QuantityRange.parse(
                            named.matches() ? named.group(2) : part,
                            Kind.CONCENTRATION,
                            Kind.AMOUNT_CONCENTRATION,
                            Kind.CONTENT));
        }
        return new Expectation(ranges, Optional.empty());
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
