package tallywell.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import tallywell.curve.Calibration;
import tallywell.curve.Calibrator;
import tallywell.curve.Curve;
import tallywell.curve.Standard;
import tallywell.curve.StandardsException;
import tallywell.curve.Weigher;
import tallywell.method.InputQuantity;
import tallywell.method.Spread;
import tallywell.plate.Content;
import tallywell.workup.Analysis;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.WellResult;

/**
 * The results of a plate by draws: it draws the ΔA of every well and every stated input, and computes everything again,
 * blanks, fits and inverses included. It is the test of the budget, and takes its place where the model is far from
 * linear.
 *
 * <p>ΔA is drawn about what was found, with the pooled repeatability at its net ΔA, or where there is none with the noise
 * of its trace; standards with the residual scatter of the calibration where the budget takes that too. A level is taken
 * from the fitted curve beyond the range of the standards too, so that results near the ends keep both sides of their
 * distribution.
 *
 * <p>Every draw is worked up twice. Once with the scatter as it was found: the standard deviation of these is the
 * standard uncertainty, to be held against u of the budget. And once with how little a few degrees of freedom know drawn
 * as well, by one common factor for each estimate (JCGM 101:2008, 6.4.9): the interval is of these, to be held against k u.
 * Their standard deviation would be larger by √(ν / (ν − 2)), and there is none for two degrees of freedom or fewer.
 *
 * <p>Readings are not drawn one by one: the scatter of ΔA within slots already holds theirs.
 */
public final class PlateSimulation {
    private PlateSimulation() {}

    /**
     * Draws the results of a plate.
     *
     * @param budget of the plate
     * @param trials how many draws, at least 1000; JCGM 101 counts 100 000 as enough for two digits of an interval
     * @param seed any number; the same one gives the same draws
     * @return one a result of the analysis, in its order; empty where there is no budget either
     */
    public static List<Optional<Simulation.Output>> run(PlateBudget budget, int trials, long seed) {
        Analysis analysis = budget.analysis();
        List<Integer> drawn = new ArrayList<>();
        for (int i = 0; i < budget.results().size(); i++) {
            if (budget.results().get(i).isPresent()) {
                drawn.add(i);
            }
        }
        if (drawn.isEmpty()) {
            return budget.results().stream()
                    .map(each -> Optional.<Simulation.Output>empty())
                    .toList();
        }
        Plan plan = new Plan(budget, drawn);
        int n = drawn.size();
        List<Simulation.Output> outputs = Simulation.run(trials, seed, 2 * n, () -> plan.new PlateTrial(n));
        List<Optional<Simulation.Output>> all = new ArrayList<>();
        for (int i = 0; i < analysis.results().size(); i++) {
            int at = drawn.indexOf(i);
            all.add(at < 0 ? Optional.empty() : Optional.of(both(outputs.get(at), outputs.get(n + at))));
        }
        return all;
    }

    private static Simulation.Output both(Simulation.Output asKnown, Simulation.Output asFound) {
        return new Simulation.Output(
                asFound.mean(), asFound.standardUncertainty(), asKnown.low(), asKnown.high(), asKnown.lost());
    }

    /** Everything that does not change from draw to draw. */
    private static final class Plan {
        private final List<StepPlan> steps = new ArrayList<>();
        private final List<Spread> spreads = new ArrayList<>();
        private final List<Double> sizes = new ArrayList<>();
        private final Map<String, Integer> inputs = new HashMap<>();

        Plan(PlateBudget budget, List<Integer> drawn) {
            Analysis analysis = budget.analysis();
            for (var step : analysis.steps()) {
                Scatter.of(step, budget.repeatabilities().get(step.number() - 1))
                        .ifPresent(scatter -> steps.add(
                                new StepPlan(new StepModel(analysis.assay().method(), step, scatter))));
            }
            steps.forEach(this::inputsOf);
            for (int at = 0; at < drawn.size(); at++) {
                Result result = analysis.results().get(drawn.get(at));
                for (StepPlan step : steps) {
                    if (step.model.step().number() == result.step()) {
                        step.results.add(resultPlan(step, result, at));
                    }
                }
            }
        }

        /** What acts on the wells of a step alike. */
        private void inputsOf(StepPlan step) {
            Spread moment = step.model.method().uncertainty().inputs().get(InputQuantity.TRIGGER_MOMENT);
            if (moment != null) {
                step.moment = input("trigger moment " + step.model.step().number(), moment);
            }
            if (step.model.slowPart() > 0) {
                step.slow = input("slow " + step.model.step().number(), Spread.standard(step.model.slowPart()));
            }
            if (Arrays.stream(step.course).anyMatch(each -> each > 0)) {
                step.ofStandards =
                        input("course of standards " + step.model.step().number(), Spread.standard(1));
            }
        }

        private ResultPlan resultPlan(StepPlan step, Result result, int output) {
            List<WellResult> wells = step.model.wellsOf(result);
            Map<InputQuantity, Spread> stated =
                    step.model.method().uncertainty().inputs();
            List<int[]> factors = new ArrayList<>();
            for (Factor factor : Factor.of(step.model, result, wells)) {
                Spread spread = stated.get(factor.quantity());
                if (spread != null) {
                    int input = input(factor.quantity() + " " + factor.name(), spread);
                    sizes.add(factor.size());
                    factors.add(new int[] {input, factor.exponent(), sizes.size() - 1});
                }
            }
            List<Integer> shifts = new ArrayList<>();
            Spread creep = stated.get(InputQuantity.CREEP);
            if (creep != null) {
                shifts.add(input("creep " + result.key(), creep));
            }
            double course = step.model.courseOf(wells);
            if (course > 0) {
                shifts.add(input("course " + result.key(), Spread.standard(course)));
            }
            return new ResultPlan(
                    output,
                    wells.stream().mapToInt(step.model::indexOf).toArray(),
                    wells.stream().mapToDouble(step.model::valuePerInput).toArray(),
                    factors.toArray(new int[0][]),
                    shifts.stream().mapToInt(Integer::intValue).toArray());
        }

        private int input(String key, Spread spread) {
            Integer known = inputs.get(key);
            if (known != null) {
                return known;
            }
            inputs.put(key, spreads.size());
            spreads.add(spread);
            return spreads.size() - 1;
        }

        /** One thread's draws. */
        private final class PlateTrial implements Simulation.Trial {
            private final int results;
            private final double[] errors = new double[spreads.size()];
            private final List<StepDraw> draws =
                    steps.stream().map(StepDraw::new).toList();

            PlateTrial(int results) {
                this.results = results;
            }

            @Override
            public void draw(SplittableRandom random, double[] outputs) {
                for (int i = 0; i < errors.length; i++) {
                    Spread spread = spreads.get(i);
                    errors[i] = spread.shape() == Spread.Shape.NORMAL
                            ? spread.halfWidth() * random.nextGaussian()
                            : spread.halfWidth() * (2 * random.nextDouble() - 1);
                }
                for (StepDraw each : draws) {
                    each.draw(random);
                    each.workUp(true, errors);
                    for (ResultPlan result : each.plan.results) {
                        outputs[result.output] = each.value(result, errors, sizes);
                    }
                    each.workUp(false, errors);
                    for (ResultPlan result : each.plan.results) {
                        outputs[results + result.output] = each.value(result, errors, sizes);
                    }
                }
            }
        }
    }

    /** One result: its wells, their values for each unit of level or net ΔA, the inputs that act on it or shift its net ΔA. */
    private static final class ResultPlan {
        private final int output;
        private final int[] wells;
        private final double[] perInput;
        private final int[][] factors;
        private final int[] shifts;

        ResultPlan(int output, int[] wells, double[] perInput, int[][] factors, int[] shifts) {
            this.output = output;
            this.wells = wells;
            this.perInput = perInput;
            this.factors = factors;
            this.shifts = shifts;
        }
    }

    /** One step, laid out by index of its wells. */
    private static final class StepPlan {
        private final StepModel model;
        private final List<ResultPlan> results = new ArrayList<>();
        private final double[] delta;
        private final double[] sd;
        private final int[] estimate;
        private final double[] freedom;
        private final int[][] blanks;
        private final int[][] untriggered;
        private final int[] @Nullable [] own;
        private final double[] level;
        private final double[] weight;
        private final @Nullable Calibration calibration;
        private final double[] creep;
        private final double[] slowBy;
        private final double[] course;
        private int ofStandards = -1;
        private int moment = -1;
        private int slow = -1;

        StepPlan(StepModel model) {
            this.model = model;
            List<WellResult> wells = model.step().wells();
            int n = wells.size();
            delta = new double[n];
            sd = new double[n];
            estimate = new int[n];
            blanks = new int[n][];
            untriggered = new int[n][];
            own = new int[n][];
            creep = new double[n];
            slowBy = new double[n];
            course = new double[n];
            List<Double> freedoms = new ArrayList<>();
            freedoms.add(model.scatter().degreesOfFreedom());
            freedoms.add(
                    model.usesResiduals()
                            ? model.step().calibration().orElseThrow().fit().degreesOfFreedom()
                            : model.scatter().degreesOfFreedom());
            Map<String, Integer> outliers = new HashMap<>();
            for (int i = 0; i < n; i++) {
                WellResult well = wells.get(i);
                delta[i] = well.deltaA().orElse(0);
                creep[i] = model.creepPerS(i);
                slowBy[i] = well.content() instanceof Content.Standard || well.content() instanceof Content.Blank
                        ? 0
                        : StepModel.slowBy(well);
                course[i] = model.isStandard(i) ? model.courseOf(i) : 0;
                Optional<Repeatability.Slot> outlier = model.scatter().outlierOf(well);
                if (outlier.isPresent()) {
                    int at = outliers.computeIfAbsent(outlier.get().key(), key -> freedoms.size());
                    if (at == freedoms.size()) {
                        freedoms.add(outlier.get().degreesOfFreedom());
                    }
                    estimate[i] = at;
                    sd[i] = Math.sqrt(outlier.get().variance());
                } else {
                    boolean drawn = well.deltaA().isPresent() && model.scatter().knows(well);
                    sd[i] = drawn ? Math.sqrt(model.scatter().variance(well)) : 0;
                }
                blanks[i] = model.blanksOf(well.trace().group());
                untriggered[i] = model.untriggeredOf(well.trace().group());
                own[i] = model.sampleBlanksOf(well).orElse(null);
            }
            calibration = model.step().calibration().orElse(null);
            List<Standard> standards = calibration == null ? List.of() : calibration.standards();
            level = standards.stream().mapToDouble(Standard::level).toArray();
            weight = standards.stream().mapToDouble(Standard::weight).toArray();
            for (int j = 0; j < level.length; j++) {
                int at = model.standards()[j];
                sd[at] = Math.sqrt(model.unitVariance() / weight[j]);
                estimate[at] = model.usesResiduals() ? 1 : 0;
            }
            freedom = freedoms.stream().mapToDouble(Double::doubleValue).toArray();
        }
    }

    /** Working space of one step in one thread. */
    private static final class StepDraw {
        private final StepPlan plan;
        private final double[] scatter;
        private final double[] drawn;
        private final double[] net;
        private final double[] response;
        private final double[] scale;
        private @Nullable Curve curve;

        StepDraw(StepPlan plan) {
            this.plan = plan;
            scatter = new double[plan.delta.length];
            drawn = new double[plan.delta.length];
            net = new double[plan.delta.length];
            response = new double[plan.level.length];
            scale = new double[plan.freedom.length];
        }

        void draw(SplittableRandom random) {
            for (int k = 0; k < scale.length; k++) {
                scale[k] = Simulation.scale(random, plan.freedom[k]);
            }
            for (int i = 0; i < scatter.length; i++) {
                scatter[i] = plan.sd[i] * random.nextGaussian();
            }
        }

        /** From the ΔA of the wells to the curve, with the size of the scatter as well known as it is, or as found. */
        void workUp(boolean asKnown, double[] errors) {
            double moment = plan.moment < 0 ? 0 : errors[plan.moment];
            double slow = plan.slow < 0 ? 0 : errors[plan.slow];
            double course = plan.ofStandards < 0 ? 0 : errors[plan.ofStandards];
            for (int i = 0; i < drawn.length; i++) {
                drawn[i] = plan.delta[i]
                        + scatter[i] * (asKnown ? scale[plan.estimate[i]] : 1)
                        + plan.creep[i] * moment
                        + plan.slowBy[i] * slow
                        + plan.course[i] * course;
            }
            for (int i = 0; i < net.length; i++) {
                net[i] = drawn[i] - offset(i);
            }
            if (plan.calibration != null) {
                for (int j = 0; j < response.length; j++) {
                    response[j] = net[plan.model.standards()[j]];
                }
                curve = fitted(plan.calibration);
            }
        }

        private double offset(int well) {
            double blank = mean(plan.blanks[well]);
            int[] own = plan.own[well];
            return own == null ? blank : mean(own) + blank - mean(plan.untriggered[well]);
        }

        private double mean(int[] wells) {
            double sum = 0;
            for (int well : wells) {
                sum += drawn[well];
            }
            return wells.length == 0 ? 0 : sum / wells.length;
        }

        private @Nullable Curve fitted(Calibration found) {
            try {
                Weigher weigher = found.weighting();
                return Calibrator.fit(plan.level, response, found.curve().model(), weigher)
                        .curve();
            } catch (StandardsException e) {
                // This draw's standards make no rising curve: the draw is counted as lost.
                return null;
            }
        }

        double value(ResultPlan result, double[] errors, List<Double> sizes) {
            double sum = 0;
            double shift = 0;
            for (int input : result.shifts) {
                shift += errors[input];
            }
            for (int i = 0; i < result.wells.length; i++) {
                double input = input(net[result.wells[i]] + shift);
                sum += result.perInput[i] * input;
            }
            double value = sum / result.wells.length;
            for (int[] factor : result.factors) {
                double relative = 1 + errors[factor[0]] / sizes.get(factor[2]);
                value = factor[1] > 0 ? value * relative : value / relative;
            }
            return value;
        }

        private double input(double response) {
            if (plan.calibration == null) {
                return response;
            }
            if (curve == null) {
                return Double.NaN;
            }
            OptionalDouble level = curve.levelOf(response);
            return level.isPresent() ? level.getAsDouble() : Double.NaN;
        }
    }
}
