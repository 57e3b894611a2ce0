package tallywell.files;

import java.util.Optional;
import tallywell.method.Form;
import tallywell.method.StandardSubstance;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.quantity.ChemicalFormula;
import tallywell.quantity.Kind;

/** Reads other forms of an analyte: what results are stated as, and what standards are weighed from. */
final class FormReader {
    private FormReader() {}

    /** What results are stated as. */
    static Optional<Form> as(Layered report) throws InputException {
        Optional<YamlNode> node = report.find("as");
        if (node.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(form(node.get()
                .mapping("a form, such as {name: citric acid monohydrate, formula: C6H8O7·H2O}")
                .only("name", "formula", "per-analyte")));
    }

    /** What standards are weighed from. */
    static Optional<StandardSubstance> standard(YamlMapping step) throws InputException {
        Optional<YamlNode> node = step.find("standard");
        if (node.isEmpty()) {
            return Optional.empty();
        }
        YamlMapping keys = node.get()
                .mapping("a substance, such as {name: lithium L-lactate, formula: C3H5LiO3, purity: 98 %}")
                .only("name", "formula", "per-analyte", "purity", "water");
        double purity = keys.has("purity") ? keys.need("purity", "").positive(Kind.RATIO) : 1;
        double water = keys.has("water") ? keys.need("water", "").notNegative(Kind.RATIO) : 0;
        if (!(purity <= 1)) {
            throw keys.need("purity", "").wrong("found a purity over 100 %; expected a part of the dry substance");
        }
        if (!(water < 1)) {
            throw keys.need("water", "").wrong("found 100 % of water or more; expected a part of what is weighed");
        }
        return Optional.of(new StandardSubstance(form(keys), purity, water));
    }

    private static Form form(YamlMapping keys) throws InputException {
        YamlNode formula = keys.need("formula", "'formula: C6H8O7·H2O'");
        double perAnalyte = 1;
        if (keys.has("per-analyte")) {
            YamlNode count = keys.need("per-analyte", "");
            perAnalyte = count.number();
            if (!(perAnalyte > 0)) {
                throw count.wrong("found '" + count.text()
                        + "'; expected how many of this form one molecule of analyte makes, above 0");
            }
        }
        try {
            return new Form(
                    keys.need("name", "'name: citric acid monohydrate'").freeText(),
                    ChemicalFormula.parse(formula.text()),
                    perAnalyte);
        } catch (IllegalArgumentException e) {
            throw formula.wrong(e);
        }
    }

    /** Another form needs the molar mass of the analyte itself. */
    static void check(Step step, Optional<YamlNode> as, Optional<YamlNode> standard) throws InputException {
        Optional<YamlNode> node = as.or(() -> standard);
        if (node.isPresent() && step.analyte().molarMass().isEmpty()) {
            throw node.get()
                    .wrong(
                            "found another form of " + step.analyte().name()
                                    + ", whose own molar mass is not known; expected 'formula' or 'molar-mass' under 'analyte'");
        }
    }
}
