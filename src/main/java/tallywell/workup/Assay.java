package tallywell.workup;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tallywell.method.AssayMethod;
import tallywell.method.DilutionSeries;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/**
 * Everything that one plate is worked up from.
 *
 * @param name run file as typed, for messages
 * @param plate which plate of the exports it is, where they name their plates; else empty
 * @param title as reports print it, or empty
 * @param operator who did the work, or empty
 * @param method how it was done
 * @param layout what stands where
 * @param samples what is in the slots
 * @param readings in the order they were taken
 * @param exclusions wells that do not count
 * @param finishedFrom the analyst's own choices of the finished part
 * @param dilutions that the laboratory makes, in which advice is given
 * @param path the measured light path of each well, if it was measured
 */
public record Assay(
        String name,
        String plate,
        String title,
        String operator,
        AssayMethod method,
        Layout layout,
        SampleList samples,
        List<Taken> readings,
        Map<Well, Run.Exclusion> exclusions,
        Map<Well, Run.FinishedFrom> finishedFrom,
        DilutionSeries dilutions,
        Optional<MeasuredPath> path) {
    /** Keeps copies that cannot change. */
    public Assay {
        readings = List.copyOf(readings);
        exclusions = Map.copyOf(exclusions);
        finishedFrom = Map.copyOf(finishedFrom);
    }

    /** A plate whose light paths were not measured. */
    public Assay(
            String name,
            String plate,
            String title,
            String operator,
            AssayMethod method,
            Layout layout,
            SampleList samples,
            List<Taken> readings,
            Map<Well, Run.Exclusion> exclusions,
            Map<Well, Run.FinishedFrom> finishedFrom,
            DilutionSeries dilutions) {
        this(
                name,
                plate,
                title,
                operator,
                method,
                layout,
                samples,
                readings,
                exclusions,
                finishedFrom,
                dilutions,
                Optional.empty());
    }

    /** The plate of a laboratory that makes the usual dilutions. */
    public Assay(
            String name,
            String plate,
            String title,
            String operator,
            AssayMethod method,
            Layout layout,
            SampleList samples,
            List<Taken> readings,
            Map<Well, Run.Exclusion> exclusions,
            Map<Well, Run.FinishedFrom> finishedFrom) {
        this(
                name,
                plate,
                title,
                operator,
                method,
                layout,
                samples,
                readings,
                exclusions,
                finishedFrom,
                DilutionSeries.USUAL);
    }

    /** The same plate in a laboratory that makes other dilutions. */
    public Assay withDilutions(DilutionSeries other) {
        return new Assay(
                name, plate, title, operator, method, layout, samples, readings, exclusions, finishedFrom, other, path);
    }

    /** The same plate with excluded wells put back. */
    public Assay withoutExclusions() {
        return withExclusions(Map.of());
    }

    /** The same plate with other wells excluded. */
    public Assay withExclusions(Map<Well, Run.Exclusion> other) {
        return new Assay(
                name, plate, title, operator, method, layout, samples, readings, other, finishedFrom, dilutions, path);
    }

    /** The same plate with another layout. */
    public Assay withLayout(Layout other) {
        return new Assay(
                name,
                plate,
                title,
                operator,
                method,
                other,
                samples,
                readings,
                exclusions,
                finishedFrom,
                dilutions,
                path);
    }

    /** The same plate with other readings of the same shape, as a simulation draws them. */
    public Assay withReadings(List<Taken> other) {
        return new Assay(
                name,
                plate,
                title,
                operator,
                method,
                layout,
                samples,
                other,
                exclusions,
                finishedFrom,
                dilutions,
                path);
    }

    /** The same plate with the light path of each well measured. */
    public Assay withPath(MeasuredPath measured) {
        return new Assay(
                name,
                plate,
                title,
                operator,
                measured.in(method),
                layout,
                samples,
                readings,
                exclusions,
                finishedFrom,
                dilutions,
                Optional.of(measured));
    }

    /** All readings, those of the light path last. */
    public List<Taken> allReadings() {
        return path.map(each -> Stream.concat(readings.stream(), Stream.of(each.peak(), each.beside()))
                        .toList())
                .orElse(readings);
    }

    /** Whether a well has a role, and a sample where its role needs one. */
    boolean uses(Well well) {
        Content content = layout.at(well);
        int slot = Traces.slotOf(content);
        return !(content instanceof Content.Unused)
                && (slot == 0 || samples.in(slot).isPresent());
    }

    /** Where messages about the run point to. */
    Place place() {
        return new Place.InFile(name, "");
    }
}
