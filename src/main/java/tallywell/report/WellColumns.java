package tallywell.report;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.method.Sample;
import tallywell.plate.Content;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;
import tallywell.workup.WellTrace;

/** The columns of {@code wells.csv}, which the sheet Wells has too. */
enum WellColumns {
    RUN,
    PLATE,
    WELL,
    ROLE,
    GROUP,
    SLOT,
    SAMPLE,
    STEP,
    ANALYTE,
    A_BEFORE,
    A_AFTER,
    CREEP_PER_MIN,
    DELTA_A,
    U_DELTA_A,
    NET_DELTA_A,
    VALUE,
    UNIT,
    USED,
    FLAGS,
    PATH_CM;

    private static final List<WellColumns> ALL = List.of(values());

    /** The name in the header row. */
    String title() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The column, from 0. */
    int column() {
        return ALL.indexOf(this);
    }

    /** The column at an index from 0. */
    static WellColumns at(int column) {
        return ALL.get(column);
    }

    /** How many columns there are. */
    static int count() {
        return ALL.size();
    }

    /** Whether the column holds numbers. */
    boolean isNumber() {
        return switch (this) {
            case RUN, PLATE, WELL, ROLE, GROUP, SAMPLE, ANALYTE, UNIT, USED, FLAGS -> false;
            default -> true;
        };
    }

    /** Whether the column is a text right of a number, which should keep a distance. */
    boolean isIndented() {
        return this == SAMPLE || this == ANALYTE || this == UNIT;
    }

    /** The header row. */
    static List<String> titles() {
        return Arrays.stream(values()).map(WellColumns::title).toList();
    }

    /** Writes the row of one well in one step, one field for each column. */
    static void write(Report report, StepAnalysis step, WellResult well, Fields to) throws IOException {
        WellTrace trace = well.trace();
        to.text(report.run());
        to.text(report.analysis().assay().plate());
        to.text(well.well().toString());
        to.text(well.content().role());
        to.text(trace.group());
        OptionalInt slot = slot(well.content());
        if (slot.isPresent()) {
            to.number(slot.getAsInt());
        } else {
            to.empty();
        }
        to.text(name(well));
        to.number(step.number());
        to.text(step.step().analyte().name());
        to.number(trace.before());
        to.number(trace.after());
        to.number(trace.creepPerMin());
        to.number(trace.deltaA());
        to.number(trace.uDeltaA());
        to.number(well.netDeltaA());
        to.number(value(well));
        to.text(hasValue(well.content()) ? well.unit().symbol() : "");
        to.text(well.used() ? "yes" : "no");
        to.text(ResultColumns.words(well.flags()));
        to.number(trace.path().map(path -> OptionalDouble.of(path.cm())).orElse(OptionalDouble.empty()));
    }

    /** Whether wells of this content have a value; the others only serve those that have. */
    static boolean hasValue(Content content) {
        return content instanceof Content.Sample
                || content instanceof Content.Control
                || content instanceof Content.Spike;
    }

    /** The value of a well that has one to show. */
    static OptionalDouble value(WellResult well) {
        return hasValue(well.content()) ? well.value() : OptionalDouble.empty();
    }

    /** The slot a well takes its sample from. */
    static OptionalInt slot(Content content) {
        if (content instanceof Content.Sample sample) {
            return OptionalInt.of(sample.slot());
        }
        if (content instanceof Content.SampleBlank blank) {
            return OptionalInt.of(blank.of());
        }
        return content instanceof Content.Spike spike ? OptionalInt.of(spike.of()) : OptionalInt.empty();
    }

    /** Name of the sample or control in a well, else empty. */
    static String name(WellResult well) {
        return well.content() instanceof Content.Control control
                ? control.name()
                : well.trace().sample().map(Sample::name).orElse("");
    }
}
