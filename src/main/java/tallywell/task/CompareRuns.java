package tallywell.task;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import tallywell.across.Comparison;
import tallywell.across.SharedSources;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.report.ComparisonTable;
import tallywell.report.ComparisonText;
import tallywell.report.ComparisonWorkbook;

/** Lays a repeat beside its original. */
public final class CompareRuns {
    /**
     * What to compare.
     *
     * @param first run file of the original
     * @param second run file of the repeat
     * @param output where a workbook goes, if wanted
     * @param overwrite whether an existing file may be replaced
     * @param made the time that the workbook carries
     * @param zone its zone
     * @param sources what both plates have in common
     */
    public record Request(
            Path first,
            Path second,
            Optional<Path> output,
            boolean overwrite,
            Instant made,
            ZoneId zone,
            SharedSources sources) {
        /**
         * The request, as a person words it.
         *
         * @param shared words of the method file that plates have in common beyond the usual ones
         * @param apart words that they have not
         * @throws IllegalArgumentException if a word is none, with a message for the user
         */
        public static Request of(
                Path first,
                Path second,
                Optional<Path> output,
                boolean overwrite,
                Instant made,
                ZoneId zone,
                List<String> shared,
                List<String> apart) {
            return new Request(first, second, output, overwrite, made, zone, RunsAcross.sources(shared, apart));
        }
    }

    /**
     * What came of it.
     *
     * @param comparison the two side by side
     * @param notices what the user should be told
     */
    public record Outcome(Comparison comparison, List<Notice> notices) {
        /** The comparison for a terminal. */
        public String text() {
            return ComparisonText.of(comparison);
        }

        /** The comparison as rows of CSV. */
        public String csv() throws IOException {
            StringBuilder text = new StringBuilder();
            try (ComparisonTable table = new ComparisonTable(text)) {
                table.add(comparison);
            }
            return text.toString();
        }
    }

    /**
     * Compares, and writes a workbook where one is wanted.
     *
     * @throws InputException if a run cannot be worked up, or the two cannot be compared; nothing is written
     */
    public Outcome run(Request request) throws InputException, OutputException {
        RunsAcross runs = RunsAcross.load(List.of(request.first(), request.second()), request.sources());
        Comparison comparison =
                Comparison.of(runs.results().get(0), runs.results().get(1));
        if (request.output().isPresent()) {
            try (Outputs outputs = new Outputs(request.overwrite(), runs.paths())) {
                outputs.write(
                        request.output().get(),
                        out -> new ComparisonWorkbook()
                                .write(comparison, runs.provenance(request.made(), request.zone()), out));
                outputs.commit();
            }
        }
        return new Outcome(comparison, runs.notices());
    }
}
