package tallywell.desk;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.assess.Assessment;
import tallywell.assess.Judgement;
import tallywell.method.Run;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/** What the wells of a run show, for one step of its method. */
public final class ValueFaces {
    private static final double MILLI = 1000;
    private static final int DIGITS = 3;

    private final Shown shown;
    private final RoleFaces roles;
    private final RunDraft draft;
    private final Layout layout;
    private final Map<Well, WellResult> results = new HashMap<>();
    private final Map<Well, Set<Flag>> flags = new HashMap<>();
    private final Map<Well, OptionalDouble> differences = new HashMap<>();
    private final String unit;

    private ValueFaces(Worked worked, int step, Shown shown) {
        this.shown = shown;
        draft = worked.draft();
        layout = draft.layout().orElseThrow().value();
        roles = new RoleFaces(shown, Optional.of(draft.sampleList()));
        String symbol = "";
        if (worked.analysis().isPresent()) {
            Analysis analysis = worked.analysis().get();
            StepAnalysis of =
                    analysis.steps().get(Math.min(step, analysis.steps().size()) - 1);
            symbol = of.step().report().unit().symbol();
            of.wells().forEach(well -> results.put(well.well(), well));
            collectFlags(worked.assessment(), of);
            collectDifferences(of);
        }
        unit = symbol;
    }

    /**
     * The plate of a run.
     *
     * @param step from 1
     */
    public static Faces of(PlateShow show, Worked worked, int step, Shown shown) {
        if (worked.draft().layout().isEmpty()) {
            return ReadingFaces.of(worked.draft(), shown);
        }
        return new ValueFaces(worked, step, shown).faces(show);
    }

    private void collectFlags(Optional<Assessment> assessment, StepAnalysis step) {
        step.wells().forEach(well -> flags.put(well.well(), EnumSet.copyOf(withNone(well.flags()))));
        assessment.ifPresent(judged -> {
            for (Judgement each : judged.judgements()) {
                if (each.result().step() == step.number()) {
                    each.result()
                            .wells()
                            .forEach(well -> addOfResult(well, each.result().flags()));
                }
            }
        });
    }

    private static Set<Flag> withNone(Set<Flag> flags) {
        Set<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        return copy;
    }

    /** Of what is said of a result only that which concerns all its wells; the rest is said of its wells. */
    private void addOfResult(Well well, Set<Flag> of) {
        for (Flag flag : of) {
            boolean ofAll = switch (flag) {
                case BELOW_WINDOW, ABOVE_WINDOW, REPLICATES_DIFFER, RECOVERY_OUT -> true;
                default -> false;
            };
            if (ofAll) {
                flags.computeIfAbsent(well, key -> EnumSet.noneOf(Flag.class)).add(flag);
            }
        }
    }

    private void collectDifferences(StepAnalysis step) {
        Map<String, List<WellResult>> groups = new HashMap<>();
        for (WellResult well : step.wells()) {
            if (well.used() && signal(well).isPresent()) {
                groups.computeIfAbsent(
                                well.content().role() + " " + well.content().word(), key -> new ArrayList<>())
                        .add(well);
            }
        }
        for (List<WellResult> group : groups.values()) {
            double mean = group.stream()
                    .mapToDouble(well -> signal(well).orElseThrow())
                    .average()
                    .orElse(0);
            if (group.size() > 1) {
                group.forEach(well -> differences.put(
                        well.well(), OptionalDouble.of(signal(well).orElseThrow() - mean)));
            }
        }
    }

    private static OptionalDouble signal(WellResult well) {
        return well.netDeltaA().isPresent() ? well.netDeltaA() : well.deltaA();
    }

    private Faces faces(PlateShow show) {
        if (show == PlateShow.ROLE) {
            return new Faces(WellMap.of(layout.format(), well -> face(well, show, 0)), 0, 0, "", "");
        }
        if (show == PlateShow.TRACES) {
            return traces();
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Well well : layout.format().all()) {
            OptionalDouble value = scaled(show, well);
            if (value.isPresent()) {
                low = Math.min(low, value.getAsDouble());
                high = Math.max(high, value.getAsDouble());
            }
        }
        if (!(high > low)) {
            low = 0;
            high = 0;
        } else if (low > 0 && low < 0.4 * high || show == PlateShow.REPLICATES) {
            low = 0;
        }
        return new Faces(
                WellMap.of(layout.format(), well -> face(well, show, DIGITS)),
                low,
                high,
                text(show, low) + unit(show),
                text(show, high) + unit(show));
    }

    private String unit(PlateShow show) {
        return switch (show) {
            case CREEP -> " mA/min";
            case REPLICATES -> " mA apart";
            case CONCENTRATION -> " " + unit + " in the original sample";
            default -> "";
        };
    }

    private Faces traces() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        Map<Well, List<double[]>> points = new HashMap<>();
        for (WellResult result : results.values()) {
            List<double[]> of = points(result.trace().readings());
            points.put(result.well(), of);
            for (double[] point : of) {
                low = Math.min(low, point[1]);
                high = Math.max(high, point[1]);
            }
        }
        boolean any = high > low;
        return new Faces(
                WellMap.of(layout.format(), well -> {
                    WellFace plain = face(well, PlateShow.ROLE, 0);
                    return new WellFace(
                            plain.shape(),
                            plain.label(),
                            plain.value(),
                            OptionalDouble.empty(),
                            plain.badges(),
                            plain.excluded(),
                            points.getOrDefault(well, List.of()),
                            plain.words());
                }),
                any ? low : 0,
                any ? high : 0,
                "A " + (any ? shown.fixed(low, 2) : ""),
                any ? shown.fixed(high, 2) : "");
    }

    private static List<double[]> points(WellReadings readings) {
        List<double[]> points = new ArrayList<>();
        double untimed = 0;
        for (List<WellReadings.Point> part : List.of(readings.baseline(), readings.after())) {
            for (WellReadings.Point point : part) {
                boolean ascends =
                        point.timed() && (points.isEmpty() || point.timeS() > points.get(points.size() - 1)[0]);
                double time =
                        ascends ? point.timeS() : points.isEmpty() ? untimed : points.get(points.size() - 1)[0] + 1;
                points.add(new double[] {time, point.absorbance()});
            }
        }
        return points;
    }

    private WellFace face(Well well, PlateShow show, int digits) {
        Content content = layout.at(well);
        WellFace plain = roles.face(well, content);
        if (content instanceof Content.Unused || content instanceof Content.Sample && isLeftOut(content)) {
            return WellFace.plain(WellFace.Shape.UNUSED, "", "", well + " · not used");
        }
        Run.Exclusion excluded = draft.excluded().get(well);
        List<WellFace.Badge> badges = new ArrayList<>();
        if (excluded != null) {
            badges.add(WellFace.Badge.EXCLUDED);
        }
        flags.getOrDefault(well, Set.of()).stream()
                .filter(flag -> concerns(content, flag))
                .flatMap(flag -> Badges.of(flag).stream())
                .distinct()
                .forEach(badges::add);
        String value = digits == 0 ? plain.value() : value(show, well);
        return new WellFace(
                plain.shape(),
                plain.label(),
                value,
                digits == 0 ? OptionalDouble.empty() : scaled(show, well),
                badges,
                excluded != null,
                List.of(),
                words(well, plain, excluded));
    }

    /** The ends of the curve are no news about the standards that make it. */
    private static boolean concerns(Content content, Flag flag) {
        boolean ends = flag == Flag.ABOVE_STANDARDS || flag == Flag.BELOW_STANDARDS;
        return !(ends && content instanceof Content.Standard);
    }

    private boolean isLeftOut(Content content) {
        return content instanceof Content.Sample sample
                && draft.sampleList().in(sample.slot()).isEmpty();
    }

    private String words(Well well, WellFace plain, Run.@org.jspecify.annotations.Nullable Exclusion excluded) {
        List<String> words = new ArrayList<>(List.of(plain.words()));
        WellResult result = results.get(well);
        if (result != null) {
            result.deltaA().ifPresent(value -> words.add("ΔA " + shown.fixed(value, 4)));
            result.trace()
                    .creepPerMin()
                    .ifPresent(value -> words.add("creep " + shown.fixed(MILLI * value, 2) + " mA/min"));
            result.value().ifPresent(value -> words.add(shown.rounded(value, 4) + " " + result.unit()));
        }
        flags.getOrDefault(well, Set.of()).stream()
                .filter(flag -> !Badges.of(flag).isEmpty())
                .forEach(flag -> words.add(flag.text()));
        if (excluded != null) {
            words.add("excluded: " + excluded.reason() + (excluded.by().isEmpty() ? "" : " (" + excluded.by() + ")"));
        }
        return String.join(" · ", words);
    }

    private String value(PlateShow show, Well well) {
        if (show == PlateShow.REPLICATES) {
            OptionalDouble difference = differences.getOrDefault(well, OptionalDouble.empty());
            if (difference.isEmpty()) {
                return "";
            }
            String text = shown.fixed(MILLI * difference.getAsDouble(), 1);
            return difference.getAsDouble() > 0 ? "+" + text : text.replace('-', '−');
        }
        OptionalDouble raw = raw(show, well);
        return raw.isPresent() ? text(show, raw.getAsDouble()) : "";
    }

    private String text(PlateShow show, double value) {
        return switch (show) {
            case CREEP, REPLICATES -> shown.fixed(value, 1).replace('-', '−');
            case CONCENTRATION -> value == 0 ? "0" : shown.rounded(value, DIGITS);
            default -> shown.fixed(value, 3).replace('-', '−');
        };
    }

    private OptionalDouble scaled(PlateShow show, Well well) {
        if (show == PlateShow.REPLICATES) {
            OptionalDouble difference = differences.getOrDefault(well, OptionalDouble.empty());
            return difference.isPresent()
                    ? OptionalDouble.of(Math.abs(MILLI * difference.getAsDouble()))
                    : OptionalDouble.empty();
        }
        Content content = layout.at(well);
        boolean outlined = content instanceof Content.Blank || content instanceof Content.SampleBlank;
        return outlined && show == PlateShow.DELTA_A ? OptionalDouble.empty() : raw(show, well);
    }

    private OptionalDouble raw(PlateShow show, Well well) {
        WellResult result = results.get(well);
        if (result == null) {
            return OptionalDouble.empty();
        }
        return switch (show) {
            case BEFORE -> result.trace().before();
            case AFTER -> result.trace().after();
            case DELTA_A -> result.deltaA();
            case CREEP ->
                result.trace().creepPerMin().isPresent()
                        ? OptionalDouble.of(MILLI * result.trace().creepPerMin().getAsDouble())
                        : OptionalDouble.empty();
            case CONCENTRATION -> result.value();
            default -> OptionalDouble.empty();
        };
    }
}
