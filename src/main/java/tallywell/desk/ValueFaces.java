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
import tallywell.chart.DrawnTrace;
import tallywell.chart.SmallTrace;
import tallywell.method.Run;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;

/** What the wells of a run show, for one step of its method. */
public final class ValueFaces {
    private static final int DIGITS = 3;

    private final Shown shown;
    private final RoleFaces roles;
    private final RunDraft draft;
    private final Layout layout;
    private final WellNumbers numbers;
    private final Map<Well, Set<Flag>> flags = new HashMap<>();

    private ValueFaces(Worked worked, int step, Shown shown) {
        this.shown = shown;
        draft = worked.draft();
        layout = draft.layout().orElseThrow().value();
        roles = new RoleFaces(shown, Optional.of(draft.sampleList()));
        Optional<StepAnalysis> of = worked.analysis()
                .map(analysis ->
                        analysis.steps().get(Math.min(step, analysis.steps().size()) - 1));
        of.ifPresent(each -> collectFlags(worked.assessment(), each));
        numbers = of.map(each -> new WellNumbers(worked, each, shown)).orElseGet(() -> new WellNumbers(shown));
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
                numbers.text(show, low) + numbers.unit(show),
                numbers.text(show, high) + numbers.unit(show));
    }

    private Faces traces() {
        Map<Well, DrawnTrace> traces = new HashMap<>();
        DrawnTrace.of(numbers.results()).forEach(each -> traces.put(each.well(), each));
        SmallTrace.Scale scale = SmallTrace.Scale.of(traces.values());
        boolean any = !traces.isEmpty();
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
                            Optional.ofNullable(traces.get(well)).map(each -> new SmallTrace(each, scale)),
                            plain.words());
                }),
                any ? scale.low() : 0,
                any ? scale.high() : 0,
                "A " + (any ? shown.fixed(scale.low(), 2) : ""),
                any ? shown.fixed(scale.high(), 2) : "");
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
        String value = digits == 0 ? plain.value() : numbers.value(show, well);
        return new WellFace(
                plain.shape(),
                plain.label(),
                value,
                digits == 0 ? OptionalDouble.empty() : scaled(show, well),
                badges,
                excluded != null,
                Optional.empty(),
                words(well, plain, excluded));
    }

    /** The ends of the curve are no news about the standards that make it. */
    private static boolean concerns(Content content, Flag flag) {
        return !(WellNumbers.isBeyond(flag) && content instanceof Content.Standard);
    }

    private boolean isLeftOut(Content content) {
        return content instanceof Content.Sample sample
                && draft.sampleList().in(sample.slot()).isEmpty();
    }

    private String words(Well well, WellFace plain, Run.@org.jspecify.annotations.Nullable Exclusion excluded) {
        List<String> words = new ArrayList<>(List.of(plain.words()));
        numbers.of(well).ifPresent(result -> {
            result.deltaA().ifPresent(value -> words.add("ΔA " + shown.fixed(value, 4)));
            result.trace()
                    .creepPerMin()
                    .ifPresent(value -> words.add("creep " + shown.fixed(WellNumbers.MILLI * value, 2) + " mA/min"));
            numbers.concentration(result).ifPresent(value -> words.add(shown.rounded(value, 4) + " " + result.unit()));
        });
        flags.getOrDefault(well, Set.of()).stream()
                .filter(flag ->
                        concerns(layout.at(well), flag) && Badges.of(flag).isPresent())
                .forEach(flag -> words.add(flag.text()));
        if (excluded != null) {
            words.add("excluded: " + excluded.reason() + (excluded.by().isEmpty() ? "" : " (" + excluded.by() + ")"));
        }
        return String.join(" · ", words);
    }

    /** Blanks keep their outline in a plate of ΔA, where their ground would say nothing. */
    private OptionalDouble scaled(PlateShow show, Well well) {
        Content content = layout.at(well);
        boolean outlined = content instanceof Content.Blank || content instanceof Content.SampleBlank;
        return outlined && show == PlateShow.DELTA_A ? OptionalDouble.empty() : numbers.size(show, well);
    }
}
