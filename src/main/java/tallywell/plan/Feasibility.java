package tallywell.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tallywell.method.AssayMethod;
import tallywell.method.LightPath;
import tallywell.method.Reagent;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.plate.Content;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/** Whether volumes can be pipetted and wells can hold them; each fault says what would make it possible. */
final class Feasibility {
    /** How much liquid a well holds where the method does not say, by the number of wells (own choices). */
    private static final Map<Integer, Double> HOLDS_UL =
            Map.of(6, 10_000.0, 12, 4_000.0, 24, 2_000.0, 48, 1_000.0, 96, 300.0, 384, 80.0, 1536, 10.0);

    private final Planner.Wanted wanted;
    private final double leastUl;
    private final Consumer<String> fault;

    Feasibility(Planner.Wanted wanted, double leastUl, Consumer<String> fault) {
        this.wanted = wanted;
        this.leastUl = leastUl;
        this.fault = fault;
    }

    /** The volumes of the method itself. */
    void volumes() {
        AssayMethod method = wanted.method();
        for (Reagent reagent : method.bench().reagents()) {
            boolean alone =
                    method.bench().into(reagent.into(), reagent.trigger()).size() == 1;
            if (alone && reagent.volumeUl() < leastUl) {
                fault.accept("the reagent '" + reagent.name() + "' takes " + Numbers.plain(reagent.volumeUl())
                        + " µL a well, less than the smallest volume of " + Numbers.plain(leastUl)
                        + " µL; expected it more dilute in a larger volume, or a smaller 'pipette-least'");
            }
        }
        for (Step step : method.steps()) {
            step.volumes().ifPresent(volumes -> {
                if (volumes.sampleUl() < leastUl) {
                    fault.accept("the method takes " + Numbers.plain(volumes.sampleUl())
                            + " µL of sample, less than the smallest volume of " + Numbers.plain(leastUl)
                            + " µL; expected more sample at a higher dilution, or a smaller 'pipette-least'");
                }
                double holds = holdsUl();
                if (volumes.afterTriggerUl() > holds) {
                    fault.accept(
                            "a well would hold " + Numbers.plain(volumes.afterTriggerUl()) + " µL after the step '"
                                    + step.analyte().name() + "', but a well of this plate takes "
                                    + Numbers.plain(holds)
                                    + " µL; expected smaller volumes in the method, a plate with larger wells, or 'well-most' under 'planning'");
                }
            });
        }
    }

    /** Amounts of standards and stocks need a molar mass to become masses. */
    void molarMasses() {
        for (Step step : wanted.method().steps()) {
            String analyte = step.analyte().name();
            Stream<Quantity> levels = wanted.layout().where(content -> content instanceof Content.Standard).stream()
                    .map(well -> ((Content.Standard) wanted.layout().at(well)).level())
                    .flatMap(level -> level.of(analyte).stream());
            Stream<Quantity> stocks = wanted.planning().stock(analyte).stream();
            Optional<Quantity> amount = Stream.concat(levels, stocks)
                    .filter(each -> each.unit().kind() == Kind.AMOUNT_CONCENTRATION)
                    .findFirst();
            if (amount.isPresent() && step.analyte().molarMass().isEmpty()) {
                fault.accept("the method '" + wanted.method().id() + "' gives no molar mass of " + analyte
                        + ", but the standards need one (found " + amount.get()
                        + "); expected 'formula' or 'molar-mass' under 'analyte', or standards in g/L");
            }
        }
    }

    /** What is taken of each reagent for all wells. */
    void parts(List<Plan.Part> parts) {
        for (Plan.Part part : parts) {
            for (Plan.Component each : part.components()) {
                if (each.totalUl() < leastUl) {
                    fault.accept(
                            part.name() + ": for " + part.wells() + " wells it takes only "
                                    + Numbers.brief(each.totalUl(), 3) + " µL of '" + each.name()
                                    + "', less than the smallest volume of " + Numbers.plain(leastUl)
                                    + " µL; expected more wells, a larger 'overage' under 'planning', or the reagent more dilute in a larger volume");
                }
            }
        }
    }

    private double holdsUl() {
        boolean vertical = wanted.method()
                .lightPath()
                .map(path -> !(path instanceof LightPath.Fixed))
                .orElse(true);
        double usual =
                vertical ? HOLDS_UL.getOrDefault(wanted.layout().format().wells(), Double.MAX_VALUE) : Double.MAX_VALUE;
        // A method made for one plate may meet a smaller one.
        return wanted.planning()
                .wellMostUl()
                .orElse(Math.min(usual, wanted.method().bench().wellUl().orElse(usual)));
    }

    /** Water makes up for a smaller volume of sample; for a larger one there must be room. */
    boolean fits(Sample sample, double own, double methodUl) {
        if (own < leastUl && own > 0) {
            fault.accept("'" + sample.label() + "' is to be pipetted with " + Numbers.plain(own)
                    + " µL, less than the smallest volume of " + Numbers.plain(leastUl)
                    + " µL; expected a higher dilution with " + Numbers.plain(Math.max(methodUl, leastUl))
                    + " µL, or a smaller 'pipette-least'");
            return false;
        }
        double mix = wanted.method().bench().volumeUl(Reagent.Into.MIX, 0);
        if (own > methodUl && methodUl > 0 && mix > 0) {
            fault.accept("'" + sample.label() + "' is to be pipetted with " + Numbers.plain(own)
                    + " µL, but the mix leaves room for " + Numbers.plain(methodUl)
                    + " µL; the well would be overfilled by "
                    + Numbers.plain(own - methodUl)
                    + " µL; expected at most that, a lower dilution, or a method whose mix holds less water");
            return false;
        }
        return true;
    }
}
