package tallywell.task;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import tallywell.across.Combination;
import tallywell.across.CombinationRule;
import tallywell.across.SharedSources;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.report.CombinationTable;
import tallywell.report.CombinationText;
import tallywell.report.CombinationWorkbook;

/** Makes one result of a sample from several runs, by the laboratory's rule. */
public final class CombineRuns {
    /**
     * What to combine.
     *
     * @param runs run files, two or more
     * @param rule how
     * @param withChecks whether results with the verdict {@code check} count
     * @param output where a workbook goes, if wanted
     * @param overwrite whether an existing file may be replaced
     * @param made the time that the workbook carries
     * @param zone its zone
     * @param sources what plates have in common
     */
    public record Request(
            List<Path> runs,
            CombinationRule rule,
            boolean withChecks,
            Optional<Path> output,
            boolean overwrite,
            Instant made,
            ZoneId zone,
            SharedSources sources) {
        /** Keeps a copy that cannot change. */
        public Request {
            runs = List.copyOf(runs);
        }

        /**
         * The request, as a person words it.
         *
         * @param rule word of the rule
         * @param shared words of the method file that plates have in common beyond the usual ones
         * @param apart words that they have not
         * @throws IllegalArgumentException if a word is none, with a message for the user
         */
        public static Request of(
                List<Path> runs,
                String rule,
                boolean withChecks,
                Optional<Path> output,
                boolean overwrite,
                Instant made,
                ZoneId zone,
                List<String> shared,
                List<String> apart) {
            CombinationRule known = Worded.of(CombinationRule.class, rule)
                    .orElseThrow(() -> new IllegalArgumentException(
                            "found --rule " + rule + "; expected one of " + Worded.words(CombinationRule.class)));
            return new Request(
                    runs, known, withChecks, output, overwrite, made, zone, RunsAcross.sources(shared, apart));
        }
    }

    /**
     * What came of it.
     *
     * @param combination the results
     * @param notices what the user should be told
     */
    public record Outcome(Combination combination, List<Notice> notices) {
        /** The results for a terminal. */
        public String text() {
            return CombinationText.of(combination);
        }

        /** The results as rows of CSV. */
        public String csv() throws IOException {
            StringBuilder text = new StringBuilder();
            try (CombinationTable table = new CombinationTable(text)) {
                table.add(combination);
            }
            return text.toString();
        }
    }

    /**
     * Combines, and writes a workbook where one is wanted.
     *
     * @throws InputException if a run cannot be worked up, or the runs do not go together; nothing is written
     */
    public Outcome run(Request request) throws InputException, OutputException {
        RunsAcross runs = RunsAcross.load(request.runs(), request.sources());
        Combination combination = Combination.of(runs.results(), request.rule(), request.withChecks());
        if (request.output().isPresent()) {
            try (Outputs outputs = new Outputs(request.overwrite(), runs.paths())) {
                outputs.write(
                        request.output().get(),
                        out -> new CombinationWorkbook()
                                .write(combination, runs.provenance(request.made(), request.zone()), out));
                outputs.commit();
            }
        }
        return new Outcome(combination, runs.notices());
    }
}
