package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.plate.WellMap;

/** What a plate shows of readings alone: the absorbance of each well. */
public final class ReadingFaces {
    private ReadingFaces() {}

    /** The first readings of a run; an empty plate if there are none. */
    static Faces of(RunDraft draft, Shown shown) {
        return draft.readings().isEmpty()
                ? new Faces(
                        WellMap.of(
                                draft.format(),
                                well -> WellFace.plain(WellFace.Shape.UNUSED, "", "", well + " · nothing yet")),
                        0,
                        0,
                        "",
                        "")
                : of(draft.readings().get(0), shown);
    }

    /** The readings of one export: the last of each well. */
    public static Faces of(Intake intake, Shown shown) {
        ReadingSeries series = intake.block().series();
        List<Double> values = new ArrayList<>();
        series.wells().forEach(well -> last(series, well).ifPresent(values::add));
        double low = values.stream().mapToDouble(Double::doubleValue).min().orElse(0);
        double high = values.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        return new Faces(
                WellMap.of(series.format(), well -> face(series, well, shown)),
                low,
                high,
                shown.fixed(low, 3),
                shown.fixed(high, 3) + " absorbance as read");
    }

    private static WellFace face(ReadingSeries series, Well well, Shown shown) {
        OptionalDouble last = last(series, well);
        if (!series.has(well)) {
            return WellFace.plain(WellFace.Shape.UNUSED, "", "", well + " · not read");
        }
        String text = last.isPresent()
                ? shown.fixed(last.getAsDouble(), 3)
                : series.mark(well, 0).word();
        return new WellFace(
                WellFace.Shape.SAMPLE,
                "",
                text,
                last,
                last.isPresent() ? List.of() : List.of(WellFace.Badge.MISSING),
                false,
                Optional.empty(),
                well + " · A " + text);
    }

    private static OptionalDouble last(ReadingSeries series, Well well) {
        for (int i = series.size(well) - 1; i >= 0; i--) {
            if (series.mark(well, i) == Mark.NONE) {
                return OptionalDouble.of(series.absorbance(well, i));
            }
        }
        return OptionalDouble.empty();
    }
}
