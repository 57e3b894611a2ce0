package tallywell.method;

import java.util.List;
import java.util.Optional;

/**
 * One trigger and what it makes visible. What a step does not say itself it has from its method.
 *
 * @param analyte what is measured
 * @param signal what the reader sees
 * @param volumes in the well, if the method says
 * @param timing when it is read
 * @param creep how creep is taken off
 * @param creepOwner to whom it belongs when another step follows
 * @param calibration how a net ΔA becomes a concentration
 * @param report units of the results
 * @param limits what is accepted
 * @param signalFormula how the readings become ΔA
 * @param chemistry the reactions, if the method states them
 * @param standard what standards are weighed from, if the method says
 * @param reactants what a coupled equilibrium makes its indicator from
 */
public record Step(
        Analyte analyte,
        Signal signal,
        Optional<Volumes> volumes,
        Timing timing,
        Creep creep,
        CreepOwner creepOwner,
        CalibrationRule calibration,
        ReportRule report,
        Limits limits,
        SignalFormula signalFormula,
        Chemistry chemistry,
        Optional<StandardSubstance> standard,
        Reactants reactants) {
    /** A step with one trigger that says nothing of its chemistry. */
    public Step(
            Analyte analyte,
            Signal signal,
            Optional<Volumes> volumes,
            Timing timing,
            Creep creep,
            CreepOwner creepOwner,
            CalibrationRule calibration,
            ReportRule report,
            Limits limits) {
        this(
                analyte,
                signal,
                volumes,
                timing,
                creep,
                creepOwner,
                calibration,
                report,
                limits,
                SignalFormula.DIFFERENCE,
                Chemistry.NONE,
                Optional.empty(),
                Reactants.IN_EXCESS);
    }

    /** The absorbance that each reactant of a coupled equilibrium could make; empty where they count as in excess. */
    public List<Double> reactantAbsorbances(Optional<LightPath> path) {
        if (reactants.mmolPerL().isEmpty()) {
            return List.of();
        }
        double cm = path.orElseThrow().cm(volumes.orElseThrow().afterTriggerUl());
        return reactants.absorbances(signal.absorptivity().orElseThrow(), cm);
    }
}
