package tallywell.budget;

import java.util.ArrayList;
import java.util.List;
import tallywell.curve.Calibration;
import tallywell.workup.Half;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * How sure a half of a difference is that lies below the lowest standard.
 *
 * <pre>{@code
 * curve      the budget as everywhere, at the level on the curve, and the course of the curve down to the blank:
 *            u = |x0| (1 - x / x lowest) / √3
 * interval   the budget at the lowest standard, and a uniform distribution from 0 to it: u = x lowest / 2 / √3
 * }</pre>
 *
 * <p>x0 is the level at which the curve meets net ΔA 0. It should be 0, since net ΔA is taken against blanks; what it is off by
 * is how far the curve may be wrong at the blank, in one direction, and less the nearer the lowest standard. That part of it
 * which is scatter counts twice so, and makes u larger by a few per cent: what bends little cannot be told from scatter.
 * Halves of one step share that error.
 *
 * <p>Source: JCGM 100:2008 (GUM), 4.3.7, for the two uniform distributions.
 */
final class HalfBudget {
    private static final double UNIFORM = 1 / Math.sqrt(3);

    private final StepModel model;
    private final Half half;
    private final Calibration calibration;
    private final List<WellResult> all;

    private HalfBudget(StepModel model, Half half) {
        this.model = model;
        this.half = half;
        this.calibration = model.step().calibration().orElseThrow();
        this.all = model.wellsOf(half.counted());
    }

    /** The model of a step in which the wells of a half have the levels that count. */
    static StepModel model(StepModel plain, Half half) {
        StepAnalysis step = plain.step().with(half.wells());
        return new StepModel(plain.method(), step, plain.scatter());
    }

    /** The budget; the half must lie below the lowest standard, the model be that of {@link #model}. */
    static ResultBudget of(StepModel model, Half half) {
        HalfBudget own = new HalfBudget(model, half);
        List<Contribution> further = new ArrayList<>();
        further.add(half.below() == Half.Below.CURVE ? own.course() : own.interval());
        return new Budgeting(model, half.counted()).budget(further);
    }

    /** Value for each unit of level of one well. */
    private double perLevel(WellResult well) {
        return model.valuePerInput(well) / all.size();
    }

    private Contribution course() {
        double sensitivity = 0;
        double blank = calibration.curve().levelOf(0).orElse(0);
        for (WellResult well : half.wells()) {
            double part = 1 - model.levelOf(well) / calibration.lowest();
            sensitivity += perLevel(well) * Math.max(0, Math.min(1, part)) * Math.signum(blank);
        }
        Source source = new Source(
                "course of the curve below the standards",
                "step " + model.step().number(),
                Estimate.COURSE);
        return new Contribution(source, sensitivity, Math.abs(blank) * UNIFORM);
    }

    private Contribution interval() {
        double sensitivity = half.wells().stream()
                .mapToDouble(well -> perLevel(well) * calibration.lowest() / 2)
                .sum();
        Source source =
                new Source("interval below the standards", half.counted().key(), Estimate.COURSE);
        return new Contribution(source, sensitivity, UNIFORM);
    }
}
