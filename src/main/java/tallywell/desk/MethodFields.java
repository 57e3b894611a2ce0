package tallywell.desk;

import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Where the fields of a form of a method stand in its file, and of what kind they are. */
final class MethodFields {
    private static final Map<String, List<String>> PATHS = Map.ofEntries(
            Map.entry("analyte", List.of("analyte", "name")),
            Map.entry("molar-mass", List.of("analyte", "molar-mass")),
            Map.entry("direction", List.of("signal", "direction")),
            Map.entry("wavelength", List.of("signal", "wavelength")),
            Map.entry("absorptivity", List.of("signal", "absorptivity")),
            Map.entry("volume.sample", List.of("volumes", "sample")),
            Map.entry("volume.before", List.of("volumes", "before-trigger")),
            Map.entry("volume.after", List.of("volumes", "after-trigger")),
            Map.entry("time.after", List.of("timing", "after")),
            Map.entry("time.first", List.of("timing", "trigger-to-first-read")),
            Map.entry("time.stagger", List.of("timing", "stagger-per-column")),
            Map.entry("creep", List.of("creep", "correct")),
            Map.entry("weights", List.of("calibration", "weights")),
            Map.entry("unit", List.of("report", "unit")),
            Map.entry("limit.delta-a.least", List.of("accept", "delta-a", "least")),
            Map.entry("limit.delta-a.most", List.of("accept", "delta-a", "most")),
            Map.entry("limit.absorbance", List.of("accept", "absorbance", "most")),
            Map.entry("limit.blank", List.of("accept", "blank-delta-a", "most")),
            Map.entry("limit.cv", List.of("accept", "replicates", "cv")),
            Map.entry("limit.range", List.of("accept", "replicates", "or-range")),
            Map.entry("limit.control.least", List.of("accept", "control-recovery", "least")),
            Map.entry("limit.control.most", List.of("accept", "control-recovery", "most")),
            Map.entry("limit.blank-sd", List.of("accept", "blank-sd", "most")),
            Map.entry("limit.standard.least", List.of("accept", "standard-recovery", "least")),
            Map.entry("limit.standard.most", List.of("accept", "standard-recovery", "most")),
            Map.entry("limit.slope.least", List.of("accept", "slope", "least")),
            Map.entry("limit.slope.most", List.of("accept", "slope", "most")),
            Map.entry("limit.left", List.of("accept", "absorbance-left", "least")));
    private static final Map<String, Kind> KINDS = Map.ofEntries(
            Map.entry("molar-mass", Kind.MOLAR_MASS),
            Map.entry("wavelength", Kind.LENGTH),
            Map.entry("absorptivity", Kind.ABSORPTIVITY),
            Map.entry("volume.sample", Kind.VOLUME),
            Map.entry("volume.before", Kind.VOLUME),
            Map.entry("volume.after", Kind.VOLUME),
            Map.entry("time.after", Kind.TIME),
            Map.entry("time.first", Kind.TIME),
            Map.entry("time.stagger", Kind.TIME),
            Map.entry("limit.cv", Kind.RATIO),
            Map.entry("limit.control.least", Kind.RATIO),
            Map.entry("limit.control.most", Kind.RATIO),
            Map.entry("limit.standard.least", Kind.RATIO),
            Map.entry("limit.standard.most", Kind.RATIO),
            Map.entry("limit.slope.least", Kind.RATIO),
            Map.entry("limit.slope.most", Kind.RATIO));
    private static final Set<String> NUMBERS = Set.of(
            "limit.delta-a.least",
            "limit.delta-a.most",
            "limit.absorbance",
            "limit.blank",
            "limit.range",
            "limit.blank-sd",
            "limit.left");

    private MethodFields() {}

    /** The keys that lead to a field of this name (without the number of its step), from the outermost. */
    static List<String> path(String plain) {
        return PATHS.getOrDefault(plain, List.of(plain));
    }

    /** Says what is wrong with a value beside its field; what belongs together the reader of methods checks. */
    static String checked(String field, String plain, String value) throws InputException {
        Kind kind = KINDS.get(plain);
        try {
            if (kind != null && !value.isEmpty()) {
                Quantity.parse(value, kind);
            } else if (NUMBERS.contains(plain) && !value.isEmpty()) {
                Double.parseDouble(value);
            }
            return value;
        } catch (NumberFormatException e) {
            throw new InputException(
                    new Place.InFile(field, ""), "found '" + value + "'; expected a number such as 0.1", e);
        } catch (IllegalArgumentException e) {
            throw new InputException(new Place.InFile(field, ""), String.valueOf(e.getMessage()), e);
        }
    }
}
