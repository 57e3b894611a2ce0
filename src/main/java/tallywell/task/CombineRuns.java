package tallywell.task;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.across.Combination;
import tallywell.across.SharedSources;
import tallywell.method.RepeatRule;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.report.CombinationTable;
import tallywell.report.CombinationText;
import tallywell.report.CombinationWorkbook;

/** Makes one result of a sample from several runs, by the laboratory's rule. */
public final class CombineRuns {
    /**
     * What to combine.
     *
     * @param runs run files, two or more
     * @param rule how; without it as the methods say, else the mean
     * @param withChecks whether results with the verdict {@code check} count
     * @param output where a workbook goes, if wanted
     * @param overwrite whether an existing file may be replaced
     * @param made the time that the workbook carries
     * @param zone its zone
     * @param sources what plates have in common
     */
    public record Request(
            List<Path> runs,
            Optional<RepeatRule> rule,
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
         * @param rule word of the rule, if one is given
         * @param shared words of the method file that plates have in common beyond the usual ones
         * @param apart words that they have not
         * @throws IllegalArgumentException if a word is none, with a message for the user
         */
        public static Request of(
                List<Path> runs,
                Optional<String> rule,
                boolean withChecks,
                Optional<Path> output,
                boolean overwrite,
                Instant made,
                ZoneId zone,
                List<String> shared,
                List<String> apart) {
            Optional<RepeatRule> known = rule.map(word -> Worded.of(RepeatRule.class, word)
                    .orElseThrow(() -> new IllegalArgumentException(
                            "found --rule " + word + "; expected one of " + Worded.words(RepeatRule.class))));
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
        Combination combination = Combination.of(runs.results(), rule(request, runs), request.withChecks());
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

    /** What a method says of repeats is the laboratory's rule, and no option overrides it. */
    private static RepeatRule rule(Request request, RunsAcross runs) throws InputException {
        Optional<RepeatRule> stated = Optional.empty();
        String by = "";
        for (Map.Entry<String, RepeatRule> each : runs.rules().entrySet()) {
            if (stated.isPresent() && stated.get() != each.getValue()) {
                throw new InputException(
                        new Place.InFile(each.getKey(), ""),
                        "found 'repeats: " + each.getValue().word() + "' in its method, and 'repeats: "
                                + stated.get().word() + "' in that of " + by + "; expected one rule");
            }
            stated = Optional.of(each.getValue());
            by = each.getKey();
        }
        if (stated.isPresent() && request.rule().isPresent() && request.rule().get() != stated.get()) {
            throw new InputException(
                    new Place.InFile(by, ""),
                    "found --rule " + request.rule().get().word() + ", and 'repeats: "
                            + stated.get().word()
                            + "' in the method; the rule of the method holds, so leave --rule away");
        }
        return stated.or(request::rule).orElse(RepeatRule.MEAN);
    }
}
