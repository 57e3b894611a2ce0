package tallywell.chart;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tallywell.assess.Assessor;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.report.SampleRuns;
import tallywell.workup.Analysis;
import tallywell.workup.Assay;
import tallywell.workup.Taken;
import tallywell.workup.WellResult;
import tallywell.workup.Workup;

/** Steps to draw, from the kinetic sample run and from changes to it. */
final class Drawn {
    private Drawn() {}

    static Assay kinetic() throws InputException {
        return SampleRuns.assay("cider-malic-kinetic");
    }

    static StepTraces step(Assay assay) throws InputException {
        Analysis analysis = new Workup().analyse(assay);
        return new StepTraces(analysis, new Assessor().assess(analysis), 1, "L-malic acid", OptionalDouble.of(340));
    }

    static WellResult well(StepTraces step, String well) {
        return step.wells().stream()
                .filter(each -> each.well().toString().equals(well))
                .findFirst()
                .orElseThrow();
    }

    /** The same run with some readings of a well out of the range of the reader. */
    static Assay over(Assay assay, String well, int from, int to) {
        Taken taken = assay.readings().get(0);
        ReadingSeries.Builder builder = ReadingSeries.timed(taken.series().format());
        for (Well each : taken.series().wells()) {
            int n = taken.series().size(each);
            double[] times = new double[n];
            double[] values = new double[n];
            Mark[] marks = new Mark[n];
            for (int i = 0; i < n; i++) {
                times[i] = taken.series().timeS(each, i);
                values[i] = taken.series().absorbance(each, i);
                marks[i] = each.toString().equals(well) && i >= from && i < to ? Mark.OVER : Mark.NONE;
            }
            builder.add(each, times, values, marks);
        }
        return assay.withReadings(java.util.List.of(
                new Taken(taken.name(), taken.triggerBefore(), taken.triggerAtS(), taken.timeS(), builder.build())));
    }

    /** The same run without some rows of the file. */
    static Assay without(Assay assay, int from, int to) {
        Taken taken = assay.readings().get(0);
        ReadingSeries.Builder builder = ReadingSeries.timed(taken.series().format());
        for (Well each : taken.series().wells()) {
            int[] kept = IntStream.range(0, taken.series().size(each))
                    .filter(i -> i < from || i >= to)
                    .toArray();
            builder.add(
                    each,
                    IntStream.of(kept)
                            .mapToDouble(i -> taken.series().timeS(each, i))
                            .toArray(),
                    IntStream.of(kept)
                            .mapToDouble(i -> taken.series().absorbance(each, i))
                            .toArray(),
                    null);
        }
        return assay.withReadings(java.util.List.of(
                new Taken(taken.name(), taken.triggerBefore(), taken.triggerAtS(), taken.timeS(), builder.build())));
    }

    /** The same run with a well taken out. */
    static Assay excluding(Assay assay, String well) {
        Well each = Well.parse(well).orElseThrow();
        return assay.withExclusions(
                Map.of(each, new tallywell.method.Run.Exclusion(java.util.List.of(each), "bubble", "J. Vale", 1)));
    }
}
