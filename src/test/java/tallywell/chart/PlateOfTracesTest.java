package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.method.SampleList;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;
import tallywell.workup.Assay;
import tallywell.workup.Flag;
import tallywell.workup.Taken;

/** The plate of small traces. */
class PlateOfTracesTest {
    private static StepTraces step;

    @BeforeAll
    static void workUp() throws Exception {
        step = Drawn.step(Drawn.excluding(Drawn.kinetic(), "E8"));
    }

    /** In the file the lowest reading is 0.0952 or so, the highest 1.27, the times 0 to 1395 s with the trigger at 225 s. */
    @Test
    void commonScaleHoldsEveryReadingAndIsStated() {
        PlateOfTraces plate = PlateOfTraces.of(step);
        for (var well : step.wells()) {
            for (TracePoints.Point point : DrawnTrace.of(well).points().of(TracePoints.Part.USED)) {
                assertThat(point.absorbance())
                        .isBetween(plate.axes().low(), plate.axes().high());
                assertThat(point.minutes())
                        .isBetween(plate.axes().first(), plate.axes().last());
            }
        }
        assertThat(plate.axesInWords())
                .startsWith("All wells on one scale: absorbance, 340 nm, ")
                .contains("−3.8 to 19.5 min from the trigger");
    }

    @Test
    void badgesTellExcludedFromRunningFromUnusual() {
        assertThat(PlateOfTraces.of(step).badges())
                .containsEntry(Badge.EXCLUDED, 1)
                .containsEntry(Badge.RUNNING, 2)
                .doesNotContainKeys(Badge.HIGH, Badge.LOW);
        String svg = new String(Images.svg(PlateOfTraces.of(step)), StandardCharsets.UTF_8);
        assertThat(svg).contains("excluded (1)", "still running at the end (2)", ">blank<", ">standard<", ">sample<");
        assertThat(svg).doesNotContain(">control<").contains(">A<", ">H<", ">12<");
    }

    /** 94 readings; a path begins with an M in the SVG. */
    @Test
    void lineIsBrokenWhereReadingsAreMissing() throws Exception {
        StepTraces marked = Drawn.step(Drawn.over(Drawn.kinetic(), "C3", 40, 60));
        StepTraces left = Drawn.step(Drawn.without(Drawn.kinetic(), 40, 60));

        assertThat(runs(step, "C3")).containsExactly(94);
        assertThat(runs(marked, "C3")).containsExactly(40, 34);
        assertThat(runs(marked, "C4")).containsExactly(94);
        assertThat(runs(left, "C4")).containsExactly(40, 34);
        assertThat(begun(marked)).isEqualTo(begun(step) + 1);
        assertThat(begun(left)).isEqualTo(begun(step) + left.wells().size());
    }

    private static List<Integer> runs(StepTraces step, String well) {
        return DrawnTrace.of(Drawn.well(step, well)).points().runs().stream()
                .map(List::size)
                .toList();
    }

    /** How many of the longer paths of the picture begin anywhere. */
    private static long begun(StepTraces step) {
        String svg = new String(Images.svg(PlateOfTraces.of(step)), StandardCharsets.UTF_8);
        return Pattern.compile(" d=\"(M[^\"]{300,})\"")
                .matcher(svg)
                .results()
                .mapToLong(path -> path.group(1).chars().filter(c -> c == 'M').count())
                .sum();
    }

    @ParameterizedTest
    @EnumSource(Flag.class)
    void everyFlagHasABadge(Flag flag) {
        assertThat(Badge.of(Set.of(flag))).isPresent();
        assertThat(Badge.of(EnumSet.of(flag, Flag.EXCLUDED))).contains(Badge.EXCLUDED);
    }

    @ParameterizedTest
    @ValueSource(strings = {"blank", "standard", "sample", "control", "sample-blank", "spike"})
    void everyRoleHasAFrameOfItsOwn(String role) {
        assertThat(WellFrame.of(role).words()).isEqualTo(role.replace('-', ' '));
    }

    @ParameterizedTest
    @ValueSource(ints = {6, 24, 384, 1536})
    void platesOfAnySizeAreDrawn(int wells) throws Exception {
        StepTraces any = Drawn.step(synthetic(PlateFormat.ofWells(wells).orElseThrow()));
        PlateOfTraces plate = PlateOfTraces.of(any);
        assertThat(plate.width()).isEqualTo(700);
        assertThat(plate.height()).isBetween(250.0, 700.0);
        assertThat(new String(Images.svg(plate), StandardCharsets.UTF_8))
                .contains(">" + any.analysis().assay().layout().format().last().rowName() + "<");
    }

    /** Blanks, two standards and samples, each a step of its own height with a little noise. */
    private static Assay synthetic(PlateFormat format) throws Exception {
        Assay like = Drawn.kinetic();
        Layout layout = new Layout("any", WellMap.of(format, well -> content(format.indexOf(well))));
        ReadingSeries.Builder builder = ReadingSeries.timed(format);
        double[] times = new double[30];
        for (int i = 0; i < times.length; i++) {
            times[i] = 30.0 * i;
        }
        for (Well well : format.all()) {
            double[] values = new double[times.length];
            double height = 0.2 * (format.indexOf(well) % 5);
            for (int i = 0; i < times.length; i++) {
                double noise = 0.0004 * Math.sin(12.9898 * i + format.indexOf(well));
                values[i] = 0.1 + (times[i] >= 225 ? height : 0) + noise;
            }
            builder.add(well, times.clone(), values, null);
        }
        Taken taken = new Taken("any.csv", false, List.of(225.0), OptionalDouble.empty(), builder.build());
        return new Assay(
                "any.yaml",
                "",
                "A title that is far too long for any plate: lees, keeved juice, late pressings and press cake of four"
                        + " weeks, followed over the whole reaction",
                "",
                like.method(),
                layout,
                SampleList.plain(layout.slots()),
                List.of(taken),
                Map.of(),
                Map.of());
    }

    private static Content content(int index) {
        return switch (index % 5) {
            case 0 -> new Content.Blank("o", "", true);
            case 1 -> standard("a", 0.1);
            case 2 -> new Content.Sample(1 + index / 5);
            case 3 -> standard("b", 0.3);
            default -> standard("c", 0.4);
        };
    }

    private static Content standard(String word, double level) {
        return new Content.Standard(
                word, "", PerAnalyte.single(Quantity.of(level, Unit.of("g/L").orElseThrow())));
    }
}
