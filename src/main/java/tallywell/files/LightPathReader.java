package tallywell.files;

import java.util.List;
import java.util.Optional;
import tallywell.method.LightPath;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.method.TriggerDilution;
import tallywell.method.Volumes;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;

/** Reads what a method says under {@code light-path}, and holds it against the rest of the method. */
final class LightPathReader {
    private LightPathReader() {}

    static Optional<LightPath> lightPath(YamlMapping top) throws InputException {
        Optional<YamlNode> node = top.find("light-path");
        if (node.isEmpty()) {
            return Optional.empty();
        }
        YamlMapping keys = node.get().mapping("a light path, such as {beam: fixed, length: 1 cm}");
        YamlNode beam = keys.need("beam", "'beam: fixed' or 'beam: vertical'");
        return switch (beam.text()) {
            case "fixed" ->
                Optional.of(new LightPath.Fixed(keys.only("beam", "length")
                        .need("length", "'length: 1 cm'")
                        .positive(Kind.LENGTH)));
            case "vertical" ->
                Optional.of(new LightPath.Vertical(keys.only("beam", "well-area")
                        .need("well-area", "'well-area: 33.2 mm2'")
                        .positive(Kind.AREA)));
            case "measured" ->
                Optional.of(new LightPath.Measured(keys.only("beam", "well-area")
                        .need("well-area", "'well-area: 33.2 mm2'")
                        .positive(Kind.AREA)));
            default -> throw beam.wrong("found 'beam: " + beam.text() + "'; expected one of fixed, vertical, measured");
        };
    }

    /** The path is measured once, in the volume after the last trigger. */
    static void checkMeasured(YamlMapping top, Optional<LightPath> lightPath, List<Step> steps) throws InputException {
        if (lightPath.isEmpty() || !(lightPath.get() instanceof LightPath.Measured)) {
            return;
        }
        YamlNode node = top.need("light-path", "");
        List<Double> volumes = steps.stream()
                .flatMap(step -> step.volumes().stream())
                .map(Volumes::afterTriggerUl)
                .toList();
        if (volumes.size() < steps.size()) {
            throw node.wrong("found 'beam: measured' in a method with a step without volumes; expected "
                    + "'volumes: {sample: ..., before-trigger: ..., after-trigger: ...}', to judge the paths by");
        }
        if (volumes.stream().distinct().count() > 1) {
            throw node.wrong(
                    "found 'beam: measured' in a method whose steps end at different volumes, though the path is "
                            + "measured once; expected the same 'after-trigger' in every step, or 'beam: vertical'");
        }
        if (steps.stream().anyMatch(step -> !step.reactants().mmolPerL().isEmpty())) {
            throw node.wrong("found 'beam: measured' with 'coupled-to', which needs one path for the plate; expected "
                    + "'beam: vertical', or no 'coupled-to'");
        }
    }

    static void checkDilution(
            YamlMapping top, TriggerDilution dilution, Optional<LightPath> lightPath, List<Step> steps)
            throws InputException {
        if (dilution == TriggerDilution.IGNORE) {
            return;
        }
        YamlNode node = top.need("trigger-dilution", "");
        if (lightPath.isPresent() && !(lightPath.get() instanceof LightPath.Fixed)) {
            throw node.wrong("found 'trigger-dilution: correct' with a vertical beam; there the absorbance follows the "
                    + "amount over the well's area and added liquid does not dilute it; expected 'ignore'");
        }
        if (steps.stream().anyMatch(step -> step.signalFormula() == SignalFormula.EQUILIBRIUM_COUPLED)) {
            throw node.wrong("found 'trigger-dilution: correct' with 'signal-formula: equilibrium-coupled'; its three "
                    + "readings are taken as read; expected 'ignore'");
        }
        if (lightPath.isEmpty()) {
            throw node.wrong("found 'trigger-dilution: correct' without a light path; expected "
                    + "'light-path: {beam: fixed, length: 1 cm}', since only a fixed beam sees the dilution");
        }
        if (steps.stream().anyMatch(step -> step.volumes().isEmpty())) {
            throw node.wrong("found 'trigger-dilution: correct' in a step without volumes; expected "
                    + "'volumes: {sample: ..., before-trigger: ..., after-trigger: ...}'");
        }
    }
}
