package tallywell.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.DilutionSeries;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.quantity.Dilution;
import tallywell.quantity.Numbers;
import tallywell.quantity.QuantityRange;

/**
 * The dilution of the laboratory's series that brings what is expected nearest the middle of the working range, and its
 * upper end into the range.
 *
 * <pre>{@code
 * wanted  = expected middle / middle of the range · v / v method     geometric mean over the steps
 * at least  expected upper end / top of the range · v / v method     of the step that needs most
 * }</pre>
 */
final class DilutionChoice {
    private final Planner.Wanted wanted;
    private final DilutionSeries series;

    DilutionChoice(Planner.Wanted wanted, DilutionSeries series) {
        this.wanted = wanted;
        this.series = series;
    }

    /**
     * A dilution with its reasons.
     *
     * @param factor the dilution
     * @param deltaA net ΔA expected in the middle, of the first step, where the method can tell
     * @param remark what the analyst should know
     */
    record Chosen(double factor, OptionalDouble deltaA, Optional<String> remark) {}

    /** One step's claim, in the concentration of the solution pipetted at the volume of the method, undiluted. */
    private record Claim(double low, double middle, double high, WorkingRange range) {}

    /**
     * Chooses; empty where nothing is expected, or nothing bounds the range.
     *
     * @throws IllegalArgumentException with a message for the user
     */
    Optional<Chosen> of(WantedSample each) {
        Optional<Expectation> expectation = each.expected().isEmpty()
                ? Optional.empty()
                : Optional.of(Expectation.parse(
                        each.expected(), wanted.method(), each.sample().treatment()));
        List<Claim> claims = claims(each.sample(), expectation);
        Optional<Double> advised = advised(each.sample());
        if (each.hasDilution()) {
            return claims.isEmpty()
                    ? Optional.empty()
                    : Optional.of(judged(each.sample(), each.sample().dilution().factor(), claims, true));
        }
        if (claims.isEmpty()) {
            return advised.or(() -> expectation.flatMap(Expectation::usual).map(d -> d.factor()))
                    .map(factor -> new Chosen(factor, OptionalDouble.empty(), Optional.empty()));
        }
        return Optional.of(chosen(each.sample(), claims));
    }

    private List<Claim> claims(Sample sample, Optional<Expectation> expectation) {
        List<Claim> claims = new ArrayList<>();
        for (Step step : wanted.method().steps()) {
            String analyte = step.analyte().name();
            Optional<QuantityRange> range =
                    expectation.flatMap(each -> each.of(analyte)).or(() -> earlier(sample, analyte));
            WorkingRange working = WorkingRange.of(wanted.method(), step, Optional.of(wanted.layout()));
            if (range.isPresent() && working.highest().isPresent()) {
                double scale = volumeScale(sample, step);
                double low = scale * Expectation.gPerL(range.get().low(), range.get(), sample, step);
                double high = scale * Expectation.gPerL(range.get().high(), range.get(), sample, step);
                claims.add(new Claim(low, (low + high) / 2, high, working));
            }
        }
        return claims;
    }

    private static double volumeScale(Sample sample, Step step) {
        return sample.volumeUl().isPresent() && step.volumes().isPresent()
                ? sample.volumeUl().getAsDouble() / step.volumes().get().sampleUl()
                : 1;
    }

    private Optional<QuantityRange> earlier(Sample sample, String analyte) {
        return wanted.earlier().stream()
                .filter(each ->
                        each.sample().equals(sample.label()) && each.analyte().equals(analyte))
                .findFirst()
                .flatMap(EarlierResult::content);
    }

    private Optional<Double> advised(Sample sample) {
        return wanted.earlier().stream()
                .filter(each -> each.sample().equals(sample.label()))
                .flatMap(each -> each.advised().stream())
                .map(dilution -> dilution.factor())
                .max(Double::compare);
    }

    private Chosen chosen(Sample sample, List<Claim> claims) {
        double logs = 0;
        double least = 1;
        for (Claim claim : claims) {
            logs += Math.log(claim.middle() / claim.range().middle().orElseThrow());
            least = Math.max(least, claim.high() / claim.range().highest().orElseThrow());
        }
        double middle = Math.max(1, Math.exp(logs / claims.size()));
        double needed = least;
        double factor = series.nearest(middle, least)
                .map(Dilution::factor)
                .orElseThrow(() -> new IllegalArgumentException("found a content that needs a dilution of at least "
                        + Numbers.brief(needed, 4) + ", but the series ends at " + Numbers.plain(series.largest())
                        + "; expected a longer 'series' under 'planning', or less sample in the well"));
        return judged(sample, factor, claims, false);
    }

    private static Chosen judged(Sample sample, double factor, List<Claim> claims, boolean given) {
        // A free half that holds little takes little off the total: nothing needs to be done about it.
        boolean lowMatters = sample.treatment() != Treatment.FREE;
        Optional<String> remark = Optional.empty();
        for (Claim claim : claims) {
            double top = claim.range().highest().orElseThrow();
            double bottom = claim.range().lowest().orElse(0);
            if (claim.high() / factor > top * (1 + 1e-9)) {
                remark = Optional.of("up to " + Numbers.brief(claim.high() / factor, 3)
                        + " g/L is expected in the solution pipetted, above the range that ends at "
                        + Numbers.brief(top, 3) + " g/L" + (given ? "; the list gives the dilution" : ""));
            } else if (lowMatters && claim.low() / factor < bottom * (1 - 1e-9)) {
                remark = Optional.of("down to " + Numbers.brief(claim.low() / factor, 3)
                        + " g/L is expected in the solution pipetted, below the range that begins at "
                        + Numbers.brief(bottom, 3) + " g/L; "
                        + (factor > 1
                                ? "a second dilution may be needed"
                                : "take more sample if it comes out too low"));
            }
        }
        Claim first = claims.get(0);
        OptionalDouble deltaA = first.range().factor().isPresent()
                ? OptionalDouble.of(
                        first.middle() / factor / first.range().factor().getAsDouble())
                : OptionalDouble.empty();
        return new Chosen(factor, deltaA, remark);
    }
}
