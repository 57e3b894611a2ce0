package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tallywell.method.AssayMethod;
import tallywell.method.InputQuantity;
import tallywell.method.LightPath;
import tallywell.method.PathReading;
import tallywell.method.Volumes;
import tallywell.notice.Notice;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/**
 * The light path of every well, from the absorption of water in the near infra-red against that of 1 cm.
 *
 * <pre>{@code
 * d = (A peak - A beside) / (A peak of 1 cm - A beside of 1 cm) · 1 cm
 * }</pre>
 *
 * <p>Each ΔA is stated for one common length, that of volume over area, before blanks are taken off: ΔA · planned / d. The
 * common length cancels from every result, so that neither the area nor a flat meniscus enters one.
 *
 * @param reading what the run says
 * @param peak readings at the peak, one a well
 * @param beside readings beside it
 */
public record MeasuredPath(PathReading reading, Taken peak, Taken beside) {
    /** Area 3 % and volume 1.6 %, the defaults of docs/uncertainty.md, added and taken twice. */
    private static final double ROOM = 2 * (0.03 + 0.016);

    private static final double MM_PER_CM = 10;

    /** The method with the uncertainty of the reading of 1 cm as that of its light path. */
    public AssayMethod in(AssayMethod method) {
        return method.withUncertainty(method.uncertainty().with(InputQuantity.LIGHT_PATH, reading.spread()));
    }

    /** What does not fit together, method and readings; none if the path is neither measured nor to be measured. */
    static List<String> faults(Assay assay) {
        boolean wanted = assay.method()
                .lightPath()
                .filter(each -> each instanceof LightPath.Measured)
                .isPresent();
        if (wanted && assay.path().isEmpty()) {
            return List.of(
                    "the method says 'beam: measured', but the run has no readings for it; expected 'path-reading' in "
                            + "the run file, or 'beam: vertical' in the method");
        }
        if (!wanted && assay.path().isPresent()) {
            return List.of(
                    "the run has a 'path-reading', but the method does not use it; expected 'light-path: {beam: measured, "
                            + "well-area: 33.2 mm2}' in the method, or no 'path-reading'");
        }
        return assay.path().map(path -> path.readingsFit(assay)).orElse(List.of());
    }

    private List<String> readingsFit(Assay assay) {
        List<String> faults = new ArrayList<>();
        for (Taken each : List.of(peak, beside)) {
            ReadingSeries series = each.series();
            if (!series.format().equals(assay.layout().format())) {
                faults.add("the light path was read on a plate of "
                        + series.format().wells() + " wells (" + each.name() + "), but the layout has "
                        + assay.layout().format().wells());
                continue;
            }
            int most = series.wells().stream().mapToInt(series::size).max().orElse(0);
            if (most > 1) {
                faults.add("found " + most + " readings a well for the light path in " + each.name()
                        + "; expected one, the end point with all liquid in the well");
            }
            List<Taken> all = new ArrayList<>(assay.readings());
            all.add(each);
            faults.addAll(OnePlate.faults(all).stream()
                    .filter(fault -> !OnePlate.faults(assay.readings()).contains(fault))
                    .toList());
        }
        boolean same = peak.series().format().equals(beside.series().format())
                && !peak.series().wells().isEmpty()
                && peak.series().wells().stream()
                        .allMatch(well -> value(peak, well).isPresent()
                                && value(peak, well).equals(value(beside, well)));
        if (same) {
            faults.add(
                    "the two readings of the light path are the same; expected one at the peak of water's absorption "
                            + "and one beside it, each picked by 'wavelength' or 'block'");
        }
        return faults.stream().distinct().toList();
    }

    /** What is odd about paths, well by well. */
    static List<Notice> remarks(Assay assay) {
        if (assay.path().isEmpty()) {
            return List.of();
        }
        MeasuredPath path = assay.path().get();
        List<Well> used = path.used(assay);
        List<Notice> remarks = new ArrayList<>();
        List<Well> without =
                used.stream().filter(well -> path.cm(well).isEmpty()).toList();
        if (!without.isEmpty()) {
            remarks.add(Notice.attention(
                    assay.place(),
                    "the light path of " + Means.words(without)
                            + " cannot be measured: a reading is missing or over the range, or there is no more at the peak than beside"
                            + " it; expected two numbers, the first larger. These wells have no ΔA"));
        }
        List<Well> doubtful = used.stream()
                .filter(well -> path.cm(well).isPresent()
                        && isDoubtful(assay.method(), path.cm(well).orElseThrow()))
                .toList();
        if (!doubtful.isEmpty()) {
            double planned = plannedCm(assay.method());
            remarks.add(Notice.attention(
                    assay.place(),
                    "the light path of " + Means.words(doubtful) + " was measured as "
                            + Numbers.fixed(path.cm(doubtful.get(0)).orElseThrow(), 3)
                            + (doubtful.size() > 1 ? " cm (the first)" : " cm")
                            + ", where the volume over the area makes "
                            + Numbers.fixed(planned, 3) + " cm; expected " + Numbers.fixed(least(assay.method()), 3)
                            + " to " + Numbers.fixed(most(planned), 3)
                            + " cm: see the volumes, the area, and the reading of 1 cm"));
        }
        return remarks;
    }

    /** The difference of 1 cm. */
    public double ofOneCm() {
        return reading.peakOfOneCm() - reading.besideOfOneCm();
    }

    /** The measured path of a well in cm; empty where a reading is missing, over, or not above that beside the peak. */
    public OptionalDouble cm(Well well) {
        OptionalDouble one = value(peak, well);
        OptionalDouble other = value(beside, well);
        if (one.isEmpty() || other.isEmpty()) {
            return OptionalDouble.empty();
        }
        double cm = (one.getAsDouble() - other.getAsDouble()) / ofOneCm();
        return cm > 0 ? OptionalDouble.of(cm) : OptionalDouble.empty();
    }

    private static OptionalDouble value(Taken taken, Well well) {
        ReadingSeries series = taken.series();
        return series.has(well) && series.mark(well, 0) == Mark.NONE
                ? OptionalDouble.of(series.absorbance(well, 0))
                : OptionalDouble.empty();
    }

    /** The paths of all wells that have one. */
    Map<Well, WellPath> paths(Assay assay) {
        double planned = plannedCm(assay.method());
        double relative = relativeScatter(assay);
        Map<Well, WellPath> paths = new TreeMap<>();
        for (Well well : assay.layout().format().all()) {
            if (assay.uses(well)) {
                cm(well).ifPresent(cm -> paths.put(well, new WellPath(cm, planned, relative)));
            }
        }
        return paths;
    }

    /**
     * Relative standard deviation of the paths of the wells that count. All hold one volume, so that it is what readings,
     * menisci and pipetting make of it together: the most that one path can be uncertain. 0 where only one well tells.
     */
    private double relativeScatter(Assay assay) {
        double[] cm = used(assay).stream()
                .filter(well -> cm(well).isPresent() && !isDoubtful(assay.method(), cm(well).orElseThrow()))
                .mapToDouble(well -> cm(well).orElseThrow())
                .toArray();
        return cm.length < 2 ? 0 : Means.sd(cm).orElse(0) / Means.mean(cm);
    }

    private List<Well> used(Assay assay) {
        return assay.layout().format().all().stream()
                .filter(well -> assay.uses(well) && !assay.exclusions().containsKey(well))
                .toList();
    }

    /** The length that volume and area make, in cm. */
    static double plannedCm(AssayMethod method) {
        double volumeUl = method.steps()
                .get(method.steps().size() - 1)
                .volumes()
                .map(Volumes::afterTriggerUl)
                .orElseThrow(() -> new AssertionError("no volumes"));
        return method.lightPath().orElseThrow().cm(volumeUl);
    }

    /** Whether a path is farther from that of volume and area than a meniscus, the area and the volumes explain. */
    static boolean isDoubtful(AssayMethod method, double cm) {
        return !(cm >= least(method) && cm <= most(plannedCm(method)));
    }

    /**
     * The shortest path that is plausible, in cm. The deepest meniscus of a liquid that wets the wall is half a sphere; its
     * middle lies R / 3 below the mean (sphere and cylinder, with h = R in the dip of docs/uncertainty.md).
     */
    private static double least(AssayMethod method) {
        double areaMm2 = method.lightPath()
                .filter(each -> each instanceof LightPath.Measured)
                .map(each -> ((LightPath.Measured) each).wellAreaMm2())
                .orElse(0.0);
        double radiusCm = Math.sqrt(areaMm2 / Math.PI) / MM_PER_CM;
        return plannedCm(method) * (1 - ROOM) - radiusCm / 3;
    }

    private static double most(double plannedCm) {
        return plannedCm * (1 + ROOM);
    }
}
