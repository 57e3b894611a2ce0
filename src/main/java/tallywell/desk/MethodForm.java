package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.files.MethodReader;
import tallywell.files.MethodText;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.LightPath;
import tallywell.method.Limits;
import tallywell.method.Model;
import tallywell.method.Step;
import tallywell.method.Volumes;
import tallywell.method.Weights;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/**
 * A method as a form of named fields with text in them. What the form does not show stays as it is in the method that it
 * starts from. Fields of a step have its number in front, such as {@code 1.volume.sample}.
 */
public final class MethodForm {
    private static final String STANDARDS = "standards ";

    private final AssayMethod base;
    private final Shown shown;

    /** A form that starts from a method. */
    public MethodForm(AssayMethod base, Shown shown) {
        this.base = base;
        this.shown = shown;
    }

    /** The choices of fields that are no free text. */
    public static List<String> choices(String field) {
        String plain = field.replaceFirst("^\\d+[.]", "");
        return switch (plain) {
            case "beam" -> List.of("vertical", "fixed", "measured", "not said");
            case "direction" -> words(Direction.values());
            case "creep" -> words(Creep.values());
            case "weights" -> words(Weights.values());
            case "calibration" -> {
                List<String> all = new ArrayList<>();
                for (Model model : Model.values()) {
                    all.add(STANDARDS + model.word());
                }
                all.add("single-standard");
                all.add("absorptivity");
                yield all;
            }
            case "unit" -> List.of("g/L", "mg/L", "g/100mL", "mmol/L", "g/100g", "mg/kg");
            default -> List.of();
        };
    }

    private static List<String> words(Worded[] options) {
        List<String> words = new ArrayList<>();
        for (Worded each : options) {
            words.add(each.word());
        }
        return words;
    }

    /** The fields with what they hold, in the order of the form. */
    public Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("id", base.id());
        fields.put("title", base.title());
        LightPath path = base.lightPath().orElse(null);
        fields.put(
                "beam",
                path == null
                        ? "not said"
                        : path instanceof LightPath.Fixed
                                ? "fixed"
                                : path instanceof LightPath.Measured ? "measured" : "vertical");
        fields.put(
                "path",
                path instanceof LightPath.Fixed fixed
                        ? quantity(fixed.lengthCm(), "cm")
                        : path instanceof LightPath.Vertical vertical
                                ? quantity(vertical.wellAreaMm2(), "mm2")
                                : path instanceof LightPath.Measured measured
                                        ? quantity(measured.wellAreaMm2(), "mm2")
                                        : "");
        for (int i = 0; i < base.steps().size(); i++) {
            step(fields, (i + 1) + ".", base.steps().get(i));
        }
        return fields;
    }

    private void step(Map<String, String> fields, String at, Step step) {
        fields.put(at + "analyte", step.analyte().name());
        fields.put(at + "molar-mass", optional(step.analyte().molarMass(), " g/mol"));
        fields.put(at + "direction", step.signal().direction().word());
        fields.put(at + "wavelength", optional(step.signal().wavelengthNm(), " nm"));
        fields.put(at + "absorptivity", optional(step.signal().absorptivity(), " L/mol/cm"));
        Optional<Volumes> volumes = step.volumes();
        fields.put(
                at + "volume.sample",
                volumes.map(each -> quantity(each.sampleUl(), "µL")).orElse(""));
        fields.put(
                at + "volume.before",
                volumes.map(each -> quantity(each.beforeTriggerUl(), "µL")).orElse(""));
        fields.put(
                at + "volume.after",
                volumes.map(each -> quantity(each.afterTriggerUl(), "µL")).orElse(""));
        fields.put(at + "time.after", time(step.timing().afterS()));
        fields.put(at + "time.first", quantity(step.timing().triggerToFirstReadS(), "s"));
        fields.put(at + "time.stagger", quantity(step.timing().staggerPerColumnS(), "s"));
        fields.put(at + "creep", step.creep().word());
        CalibrationRule rule = step.calibration();
        boolean standards = rule instanceof CalibrationRule.ByStandards;
        fields.put(
                at + "calibration",
                rule instanceof CalibrationRule.ByStandards by
                        ? STANDARDS + by.model().word()
                        : rule.word());
        fields.put(
                at + "weights",
                standards ? ((CalibrationRule.ByStandards) rule).weights().word() : Weights.NONE.word());
        fields.put(at + "unit", step.report().unit().symbol());
        limits(fields, at + "limit.", step.limits());
    }

    private void limits(Map<String, String> fields, String at, Limits limits) {
        fields.put(at + "delta-a.least", optional(limits.deltaALeast(), ""));
        fields.put(at + "delta-a.most", optional(limits.deltaAMost(), ""));
        fields.put(at + "absorbance", optional(limits.absorbanceMost(), ""));
        fields.put(at + "blank", optional(limits.blankDeltaAMost(), ""));
        fields.put(at + "cv", percent(limits.replicateCv()));
        fields.put(at + "range", optional(limits.replicateRange(), ""));
        fields.put(at + "control.least", percent(limits.controlLeast()));
        fields.put(at + "control.most", percent(limits.controlMost()));
        BatchLimits batch = limits.batch();
        fields.put(at + "blank-sd", optional(batch.blankSdMost(), ""));
        fields.put(at + "standard.least", percent(batch.standardLeast()));
        fields.put(at + "standard.most", percent(batch.standardMost()));
        fields.put(at + "slope.least", percent(batch.slopeLeast()));
        fields.put(at + "slope.most", percent(batch.slopeMost()));
        fields.put(at + "left", optional(batch.absorbanceLeft(), ""));
    }

    private String quantity(double value, String unit) {
        return shown.plain(value) + " " + unit;
    }

    private String optional(OptionalDouble value, String unit) {
        return value.isPresent() ? shown.plain(value.getAsDouble()) + unit : "";
    }

    private String percent(OptionalDouble fraction) {
        return fraction.isPresent()
                ? shown.plain(Double.parseDouble(Numbers.rounded(100 * fraction.getAsDouble(), 12))) + " %"
                : "";
    }

    private String time(OptionalDouble seconds) {
        if (seconds.isEmpty()) {
            return "";
        }
        double value = seconds.getAsDouble();
        return value >= 60 && value % 30 == 0 ? quantity(value / 60, "min") : quantity(value, "s");
    }

    /**
     * The text of the method with what the fields hold now; fields that were not touched change nothing.
     *
     * @param text of the method that the form started from
     * @throws InputException naming the field, what was found and what would be right
     */
    public Origin<AssayMethod> method(String text, Map<String, String> filled) throws InputException {
        MethodText changed = new MethodText(text);
        Map<String, String> before = fields();
        for (Map.Entry<String, String> each : filled.entrySet()) {
            String value = each.getValue().strip();
            if (!value.equals(before.get(each.getKey()))) {
                change(changed, each.getKey(), value, filled);
            }
        }
        AssayMethod method = new MethodReader().parse(Path.of("the form"), changed.text());
        return new Origin<>(method.id(), Optional.empty(), method, Optional.of(changed.text()));
    }

    private void change(MethodText text, String field, String value, Map<String, String> filled) throws InputException {
        String plain = field.replaceFirst("^\\d+[.]", "");
        if (plain.equals("beam") || plain.equals("path")) {
            lightPath(text, filled);
            return;
        }
        List<String> path = MethodFields.path(plain);
        if (field.equals(plain)) {
            text.set(path, plain.equals("id") ? value.toLowerCase(Locale.ROOT).replace(' ', '-') : value);
            return;
        }
        int step = Integer.parseInt(field.substring(0, field.indexOf('.'))) - 1;
        if (plain.equals("calibration")) {
            boolean standards = value.startsWith(STANDARDS);
            text.setOfStep(step, List.of("calibration", "by"), standards ? "standards" : value);
            text.setOfStep(step, List.of("calibration", "model"), standards ? value.substring(STANDARDS.length()) : "");
            if (!standards) {
                text.setOfStep(step, List.of("calibration", "weights"), "");
            }
            return;
        }
        text.setOfStep(step, path, MethodFields.checked(field, plain, shown.pointed(value)));
        if (path.get(0).equals("volumes")) {
            // A list of reagents that no longer comes to the volumes would contradict them.
            text.set(List.of("reagents"), "");
        }
    }

    private void lightPath(MethodText text, Map<String, String> filled) throws InputException {
        String beam = filled.getOrDefault("beam", "");
        String size = shown.pointed(filled.getOrDefault("path", "").strip());
        boolean vertical = beam.equals("vertical") || beam.equals("measured");
        boolean fixed = beam.equals("fixed");
        try {
            if (vertical || fixed) {
                Quantity.parse(size, vertical ? Kind.AREA : Kind.LENGTH);
            }
        } catch (IllegalArgumentException e) {
            throw new InputException(new Place.InFile("path", ""), String.valueOf(e.getMessage()), e);
        }
        text.set(List.of("light-path", "beam"), vertical || fixed ? beam : "");
        text.set(List.of("light-path", "well-area"), vertical ? size : "");
        text.set(List.of("light-path", "length"), fixed ? size : "");
    }
}
