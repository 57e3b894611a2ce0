package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.method.LightPath;
import tallywell.method.Reactants;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Reads what a coupled equilibrium makes its indicator from. */
final class CoupledReader {
    private CoupledReader() {}

    static Reactants reactants(YamlMapping step) throws InputException {
        Optional<YamlNode> node = step.find("coupled-to");
        if (node.isEmpty()) {
            return Reactants.IN_EXCESS;
        }
        List<Double> mmolPerL = new ArrayList<>();
        for (YamlNode each : node.get()
                .mapping(
                        "reactants with their concentration in the well, such as {NAD: 1.2 mmol/L, L-malate: 5 mmol/L}")
                .all()
                .values()) {
            Quantity quantity = each.quantity(Kind.AMOUNT_CONCENTRATION);
            if (!(quantity.value() > 0)) {
                throw each.wrong("found '" + each.text() + "'; expected a concentration above 0");
            }
            mmolPerL.add(quantity.base());
        }
        return new Reactants(mmolPerL);
    }

    static void check(Step step, YamlMapping keys, Optional<LightPath> lightPath) throws InputException {
        Optional<YamlNode> node = keys.find("coupled-to");
        if (node.isEmpty()) {
            return;
        }
        if (step.signalFormula() != SignalFormula.EQUILIBRIUM_COUPLED) {
            throw node.get()
                    .wrong("found 'coupled-to' without an equilibrium; expected 'signal-formula: equilibrium-coupled'");
        }
        if (lightPath.isEmpty()
                || step.volumes().isEmpty()
                || step.signal().absorptivity().isEmpty()) {
            throw node.get()
                    .wrong(
                            "found 'coupled-to' without what makes an absorbance of it; expected 'light-path', 'volumes', and "
                                    + "'absorptivity' under 'signal'");
        }
    }
}
