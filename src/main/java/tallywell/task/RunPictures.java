package tallywell.task;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tallywell.chart.Images;
import tallywell.chart.Picture;
import tallywell.chart.PlateOfTraces;
import tallywell.chart.StepTraces;
import tallywell.chart.TracePicture;
import tallywell.notice.OutputException;
import tallywell.report.Report;
import tallywell.report.SheetPicture;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * The pictures of a run: for each step with traces the plate, then every flagged well. For a run of end points there are
 * none, and nothing that draws is loaded.
 */
final class RunPictures {
    /** Pixels per point of a file: 1400 across. */
    private static final double FILE_SCALE = 2;

    /** Less in a workbook, which is to stay small enough to be sent. */
    private static final double PLATE_SCALE = 1.75;

    private static final double WELL_SCALE = 1.5;
    private static final int MOST_WELLS = 24;

    private final List<Named> plates = new ArrayList<>();
    private final List<Named> wells = new ArrayList<>();

    /** A picture with the name of its file, without an ending, and what it shows. */
    private record Named(String file, String title, Picture picture) {}

    private RunPictures(Report report) {
        List<StepAnalysis> steps = report.analysis().steps();
        for (StepAnalysis step : steps) {
            StepTraces traces = new StepTraces(
                    report.analysis(),
                    report.assessment(),
                    step.number(),
                    step.step().analyte().name(),
                    step.step().signal().wavelengthNm());
            if (traces.hasTraces()) {
                add(traces, steps.size() == 1 ? "" : "-step-" + step.number());
            }
        }
    }

    static RunPictures of(Report report) {
        return new RunPictures(report);
    }

    private void add(StepTraces step, String suffix) {
        plates.add(
                new Named("plate-traces" + suffix, "Traces of the plate, " + step.analyte(), PlateOfTraces.of(step)));
        for (WellResult well : step.flagged()) {
            wells.add(new Named(
                    "trace-" + well.well() + suffix,
                    "Trace of " + well.well() + ", " + step.contentOf(well) + ", " + step.analyte(),
                    TracePicture.of(step, well)));
        }
    }

    /** Whether there is nothing to draw. */
    boolean isEmpty() {
        return plates.isEmpty();
    }

    /** Why nothing can be drawn on this computer, if it cannot. */
    Optional<String> obstacle() {
        return isEmpty() ? Optional.empty() : Images.obstacle();
    }

    /** The pictures for the workbook: plates, then the first flagged wells. */
    List<SheetPicture> forSheet() {
        List<SheetPicture> all = new ArrayList<>(drawn(plates, PLATE_SCALE));
        all.addAll(drawn(wells.subList(0, Math.min(MOST_WELLS, wells.size())), WELL_SCALE));
        return all;
    }

    private static List<SheetPicture> drawn(List<Named> pictures, double scale) {
        return pictures.parallelStream()
                .map(each -> new SheetPicture(
                        each.title(),
                        Images.png(each.picture(), scale),
                        each.picture().height() / each.picture().width()))
                .toList();
    }

    /** What the sheet shows and leaves out, in words. */
    String note() {
        String flagged = wells.isEmpty()
                ? "No well is flagged."
                : wells.size() > MOST_WELLS
                        ? "Below it the first " + MOST_WELLS + " of " + wells.size() + " flagged wells."
                        : "Below it every flagged well (" + wells.size() + ").";
        return "The plate on common axes. " + flagged;
    }

    /**
     * Writes every picture as PNG and SVG.
     *
     * @param folder which is made if there is something to write
     * @return the files
     */
    List<Path> write(Outputs outputs, Path folder) throws OutputException {
        if (isEmpty()) {
            return List.of();
        }
        Optional<String> obstacle = obstacle();
        if (obstacle.isPresent()) {
            throw new OutputException(folder, "no picture can be drawn here: " + obstacle.get());
        }
        outputs.folder(folder);
        List<Named> all = new ArrayList<>(plates);
        all.addAll(wells);
        List<Path> targets = new ArrayList<>();
        for (Named each : all) {
            targets.add(folder.resolve(each.file() + ".png"));
            targets.add(folder.resolve(each.file() + ".svg"));
        }
        for (Path target : targets) {
            outputs.check(target);
        }
        List<byte[]> files = IntStream.range(0, targets.size())
                .parallel()
                .mapToObj(i -> file(all.get(i / 2).picture(), i % 2 == 0))
                .toList();
        for (int i = 0; i < files.size(); i++) {
            byte[] bytes = files.get(i);
            outputs.write(targets.get(i), out -> out.write(bytes));
        }
        return targets;
    }

    private static byte[] file(Picture picture, boolean pixels) {
        return pixels ? Images.png(picture, FILE_SCALE) : Images.svg(picture);
    }
}
