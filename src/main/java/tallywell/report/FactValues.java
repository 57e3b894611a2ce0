package tallywell.report;

import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Curve;
import tallywell.curve.FittedVariance;
import tallywell.curve.Model;
import tallywell.curve.Standard;
import tallywell.method.LightPath;
import tallywell.method.Volumes;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;

/** What a step is worked up with, in numbers. */
final class FactValues {
    private final Map<Fact, OptionalDouble> values = new EnumMap<>(Fact.class);

    FactValues(Analysis analysis, StepAnalysis step) {
        step.step().volumes().ifPresent(volumes -> {
            put(Fact.VOLUME_BEFORE, volumes.beforeTriggerUl());
            put(Fact.VOLUME_AFTER, volumes.afterTriggerUl());
            put(Fact.VOLUME_SAMPLE, volumes.sampleUl());
            put(Fact.TRIGGER_FACTOR, volumes.beforeTriggerUl() / volumes.afterTriggerUl());
        });
        values.put(Fact.MOLAR_MASS, step.step().analyte().molarMass());
        values.put(Fact.ABSORPTIVITY, step.step().signal().absorptivity());
        put(Fact.SIGNALS, step.step().analyte().signalPerAnalyte());
        analysis.assay().path().ifPresent(path -> {
            put(Fact.WELL_AREA, measured(analysis).wellAreaMm2());
            put(
                    Fact.PATH,
                    measured(analysis).cm(step.step().volumes().orElseThrow().afterTriggerUl()));
            put(Fact.ONE_CM_PEAK, path.reading().peakOfOneCm());
            put(Fact.ONE_CM_BESIDE, path.reading().besideOfOneCm());
        });
        if (step.calibration().isPresent()) {
            fitted(step.calibration().get());
        } else {
            absorptivity(analysis, step);
        }
    }

    OptionalDouble of(Fact fact) {
        return values.getOrDefault(fact, OptionalDouble.empty());
    }

    private static LightPath.Measured measured(Analysis analysis) {
        return (LightPath.Measured) analysis.assay().method().lightPath().orElseThrow();
    }

    private void put(Fact fact, double value) {
        values.put(fact, OptionalDouble.of(value));
    }

    private void absorptivity(Analysis analysis, StepAnalysis step) {
        Volumes volumes = step.step().volumes().orElseThrow();
        LightPath path = analysis.assay().method().lightPath().orElseThrow();
        if (path instanceof LightPath.Vertical vertical) {
            put(Fact.WELL_AREA, vertical.wellAreaMm2());
        }
        double cm = path.cm(volumes.afterTriggerUl());
        put(Fact.PATH, cm);
        put(
                Fact.FACTOR,
                volumes.afterTriggerUl()
                        * step.step().analyte().molarMass().orElseThrow()
                        / (step.step().signal().absorptivity().orElseThrow()
                                * cm
                                * volumes.sampleUl()
                                * step.step().analyte().signalPerAnalyte()));
    }

    private void fitted(Calibration calibration) {
        put(Fact.POINTS, calibration.standards().size());
        put(Fact.LOWEST, calibration.lowest());
        put(Fact.HIGHEST, calibration.highest());
        values.put(Fact.RESIDUAL_SD, calibration.residualSd());
        if (calibration.weighting() instanceof FittedVariance fitted) {
            put(Fact.VARIANCE_OF_BLANK, fitted.ofConstant());
            put(Fact.VARIANCE_GROWTH, fitted.ofProportional());
        }
        Curve curve = calibration.curve();
        double least = curve.at(calibration.lowest());
        double most = curve.at(calibration.highest());
        double room = Calibration.END_TOLERANCE * (most - least);
        put(Fact.NET_LOWEST, least - room);
        put(Fact.NET_HIGHEST, most + room);
        means(calibration);
        coefficients(curve);
    }

    private void means(Calibration calibration) {
        double weight = 0;
        double level = 0;
        double net = 0;
        for (Standard standard : calibration.standards()) {
            weight += standard.weight();
            level += standard.weight() * standard.level();
            net += standard.weight() * standard.response();
        }
        double mean = level / weight;
        put(Fact.MEAN_LEVEL, mean);
        put(Fact.MEAN_NET, net / weight);
        if (calibration.curve().model() == Model.QUADRATIC) {
            bend(calibration, mean, weight);
        }
    }

    private void bend(Calibration calibration, double mean, double weight) {
        double squares = 0;
        double cubes = 0;
        for (Standard standard : calibration.standards()) {
            double from = standard.level() - mean;
            squares += standard.weight() * from * from;
            cubes += standard.weight() * from * from * from;
        }
        double alpha = cubes / squares;
        double square = calibration.curve().coefficient(2);
        put(Fact.ALPHA, alpha);
        put(Fact.BETA, squares / weight);
        put(Fact.STRAIGHT, calibration.curve().coefficient(1) + square * (alpha + 2 * mean));
        put(Fact.BENT, square);
    }

    private void coefficients(Curve curve) {
        switch (curve.model()) {
            case LINE -> {
                put(Fact.INTERCEPT, curve.coefficient(0));
                put(Fact.SLOPE, curve.coefficient(1));
            }
            case LINE_THROUGH_ZERO -> {
                put(Fact.INTERCEPT, 0);
                put(Fact.SLOPE, curve.coefficient(0));
            }
            case QUADRATIC -> {
                put(Fact.INTERCEPT, curve.coefficient(0));
                put(Fact.SLOPE, curve.coefficient(1));
                put(Fact.SQUARE, curve.coefficient(2));
            }
            case LOGISTIC_4, LOGISTIC_5 -> {
                put(Fact.LOWER, curve.coefficient(0));
                put(Fact.STEEPNESS, curve.coefficient(1));
                put(Fact.MIDDLE, curve.coefficient(2));
                put(Fact.UPPER, curve.coefficient(3));
                put(Fact.ASYMMETRY, curve.size() == 5 ? curve.coefficient(4) : 1);
            }
        }
    }
}
