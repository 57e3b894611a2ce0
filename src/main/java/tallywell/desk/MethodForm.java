package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.files.MethodReader;
import tallywell.files.MethodWriter;
import tallywell.method.Analyte;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.LightPath;
import tallywell.method.Limits;
import tallywell.method.Model;
import tallywell.method.ReportRule;
import tallywell.method.Signal;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.method.Volumes;
import tallywell.method.Weights;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

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
            case "beam" -> List.of("vertical", "fixed", "not said");
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
        fields.put("beam", path == null ? "not said" : path instanceof LightPath.Fixed ? "fixed" : "vertical");
        fields.put(
                "path",
                path instanceof LightPath.Fixed fixed
                        ? quantity(fixed.lengthCm(), "cm")
                        : path instanceof LightPath.Vertical vertical ? quantity(vertical.wellAreaMm2(), "mm2") : "");
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
    }

    private String quantity(double value, String unit) {
        return shown.plain(value) + " " + unit;
    }

    private String optional(OptionalDouble value, String unit) {
        return value.isPresent() ? shown.plain(value.getAsDouble()) + unit : "";
    }

    private String percent(OptionalDouble fraction) {
        return fraction.isPresent() ? shown.rounded(100 * fraction.getAsDouble(), 12) + " %" : "";
    }

    private String time(OptionalDouble seconds) {
        if (seconds.isEmpty()) {
            return "";
        }
        double value = seconds.getAsDouble();
        return value >= 60 && value % 30 == 0 ? quantity(value / 60, "min") : quantity(value, "s");
    }

    /**
     * The method with what the fields hold now.
     *
     * @throws InputException naming the field, what was found and what would be right
     */
    public AssayMethod method(Map<String, String> fields) throws InputException {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < base.steps().size(); i++) {
            steps.add(step(new Filled(fields, (i + 1) + "."), base.steps().get(i)));
        }
        Filled top = new Filled(fields, "");
        AssayMethod changed = new AssayMethod(
                top.text("id").toLowerCase(java.util.Locale.ROOT).replace(' ', '-'),
                top.text("title"),
                base.source(),
                steps,
                lightPath(top),
                base.triggerDilution(),
                base.before(),
                base.cautions(),
                base.uncertainty());
        // The format's own reader checks what belongs together.
        return new MethodReader().parse(Path.of("the form"), new MethodWriter().text(changed));
    }

    private static Optional<LightPath> lightPath(Filled top) throws InputException {
        return switch (top.text("beam")) {
            case "fixed" -> Optional.of(new LightPath.Fixed(top.positive("path", Kind.LENGTH)));
            case "vertical" -> Optional.of(new LightPath.Vertical(top.positive("path", Kind.AREA)));
            default -> Optional.empty();
        };
    }

    private static Step step(Filled in, Step from) throws InputException {
        OptionalDouble molarMass = in.optional("molar-mass", Kind.MOLAR_MASS);
        Analyte analyte = new Analyte(
                in.text("analyte"),
                from.analyte().formula(),
                molarMass,
                from.analyte().signalPerAnalyte());
        OptionalDouble wavelength = in.optional("wavelength", Kind.LENGTH);
        Signal signal = new Signal(
                from.signal().species(),
                wavelength.isPresent()
                        ? OptionalDouble.of(Quantity.of(wavelength.getAsDouble(), Unit.CENTIMETRE)
                                .in(Unit.NANOMETRE))
                        : wavelength,
                in.optional("absorptivity", Kind.ABSORPTIVITY),
                in.word("direction", Direction.class));
        Timing timing = new Timing(
                from.timing().beforeS(),
                in.optional("time.after", Kind.TIME),
                in.optional("time.first", Kind.TIME).orElse(0),
                in.optional("time.stagger", Kind.TIME).orElse(0),
                from.timing().staggerFrom(),
                from.timing().settleS());
        Unit unit = Unit.of(in.text("unit")).orElseThrow(() -> in.wrong("unit", "a unit such as g/L"));
        return new Step(
                analyte,
                signalAt(signal, from.signal()),
                volumes(in),
                timing,
                in.word("creep", Creep.class),
                from.creepOwner(),
                calibration(in),
                new ReportRule(unit, from.report().solids()),
                limits(in, from.limits()));
    }

    /** A wavelength goes through centimetres and back; where it is the same to a picometre, it is the same. */
    private static Signal signalAt(Signal signal, Signal from) {
        boolean same = signal.wavelengthNm().isPresent()
                && from.wavelengthNm().isPresent()
                && Math.abs(signal.wavelengthNm().getAsDouble()
                                - from.wavelengthNm().getAsDouble())
                        < 1e-3;
        return same
                ? new Signal(signal.species(), from.wavelengthNm(), signal.absorptivity(), signal.direction())
                : signal;
    }

    private static Optional<Volumes> volumes(Filled in) throws InputException {
        if (in.text("volume.sample").isEmpty()) {
            return Optional.empty();
        }
        double sample = in.positive("volume.sample", Kind.VOLUME);
        double before = in.positive("volume.before", Kind.VOLUME);
        double after = in.positive("volume.after", Kind.VOLUME);
        if (!(before >= sample && after >= before)) {
            throw in.wrong("volume.after", "totals that include the sample and grow: sample, before, after");
        }
        return Optional.of(new Volumes(sample, before, after));
    }

    private static CalibrationRule calibration(Filled in) throws InputException {
        String word = in.text("calibration");
        if (word.equals("absorptivity")) {
            return new CalibrationRule.ByAbsorptivity();
        }
        if (word.equals("single-standard")) {
            return new CalibrationRule.BySingleStandard();
        }
        Model model = Worded.of(Model.class, word.replace(STANDARDS, ""))
                .orElseThrow(() -> in.wrong("calibration", "one of " + choices("calibration")));
        return new CalibrationRule.ByStandards(model, in.word("weights", Weights.class));
    }

    private static Limits limits(Filled in, Limits from) throws InputException {
        return new Limits(
                in.number("limit.delta-a.least"),
                in.number("limit.delta-a.most"),
                in.number("limit.absorbance"),
                in.number("limit.blank"),
                in.optional("limit.cv", Kind.RATIO),
                in.number("limit.range"),
                in.optional("limit.control.least", Kind.RATIO),
                in.optional("limit.control.most", Kind.RATIO),
                from.spikeLeast(),
                from.spikeMost(),
                from.batch());
    }

    /** The fields as a person filled them in. */
    private final class Filled {
        private final Map<String, String> fields;
        private final String at;

        Filled(Map<String, String> fields, String at) {
            this.fields = fields;
            this.at = at;
        }

        String text(String field) {
            return fields.getOrDefault(at + field, "").strip();
        }

        InputException wrong(String field, String right) {
            return new InputException(
                    new Place.InFile(at + field, ""), "found '" + text(field) + "'; expected " + right);
        }

        OptionalDouble optional(String field, Kind kind) throws InputException {
            if (text(field).isEmpty()) {
                return OptionalDouble.empty();
            }
            try {
                Quantity quantity = Quantity.parse(shown.pointed(text(field)), kind);
                if (quantity.value() >= 0) {
                    return OptionalDouble.of(quantity.base());
                }
            } catch (IllegalArgumentException e) {
                throw new InputException(new Place.InFile(at + field, ""), String.valueOf(e.getMessage()), e);
            }
            throw wrong(field, "0 or more");
        }

        double positive(String field, Kind kind) throws InputException {
            OptionalDouble value = optional(field, kind);
            if (value.isPresent() && value.getAsDouble() > 0) {
                return value.getAsDouble();
            }
            throw wrong(field, "a " + kind.label() + " above 0, with its unit");
        }

        OptionalDouble number(String field) throws InputException {
            if (text(field).isEmpty()) {
                return OptionalDouble.empty();
            }
            try {
                double value = Double.parseDouble(shown.pointed(text(field)));
                if (Math.abs(value) <= Double.MAX_VALUE) {
                    return OptionalDouble.of(value);
                }
            } catch (NumberFormatException e) {
                throw new InputException(
                        new Place.InFile(at + field, ""), "found '" + text(field) + "'; expected a number", e);
            }
            throw wrong(field, "a number");
        }

        <E extends Enum<E> & Worded> E word(String field, Class<E> options) throws InputException {
            return Worded.of(options, text(field)).orElseThrow(() -> wrong(field, "one of " + Worded.words(options)));
        }
    }
}
