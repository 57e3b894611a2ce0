package tallywell.task;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.across.RunResults;
import tallywell.across.SharedSources;
import tallywell.assess.Assessor;
import tallywell.method.InputQuantity;
import tallywell.method.RepeatRule;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.report.InputFile;
import tallywell.report.Provenance;
import tallywell.workup.Taken;
import tallywell.workup.Workup;

/** Several runs, worked up to be laid side by side. */
final class RunsAcross {
    private final SharedSources shared;
    private final List<RunResults> results = new ArrayList<>();
    private final Map<Path, InputFile> files = new LinkedHashMap<>();
    private final List<Notice> notices = new ArrayList<>();
    private final Map<String, RepeatRule> rules = new LinkedHashMap<>();

    private RunsAcross(SharedSources shared) {
        this.shared = shared;
    }

    /**
     * What the user says of the equipment of several runs.
     *
     * @param shared words of the method file that plates have in common beyond the usual ones
     * @param apart words that they have not
     * @throws IllegalArgumentException if a word is none, with a message for the user
     */
    static SharedSources sources(List<String> shared, List<String> apart) {
        Set<InputQuantity> more = quantities("--shared", shared);
        Set<InputQuantity> less = quantities("--not-shared", apart);
        for (InputQuantity each : more) {
            if (less.contains(each)) {
                throw new IllegalArgumentException(
                        "found '" + each.word() + "' with --shared and with --not-shared; expected it with one");
            }
        }
        return SharedSources.usualWith(more, less);
    }

    private static Set<InputQuantity> quantities(String option, List<String> words) {
        Set<InputQuantity> quantities = EnumSet.noneOf(InputQuantity.class);
        for (String word : words) {
            quantities.add(Worded.of(InputQuantity.class, word.strip())
                    .orElseThrow(() -> new IllegalArgumentException("found " + option + " " + word
                            + "; expected one of " + Worded.words(InputQuantity.class))));
        }
        return quantities;
    }

    /**
     * Works runs up.
     *
     * @throws InputException if one cannot be worked up, or two have the same readings
     */
    static RunsAcross load(List<Path> runs, SharedSources shared) throws InputException {
        RunsAcross across = new RunsAcross(shared);
        Map<String, Path> seen = new HashMap<>();
        for (Path run : runs) {
            RunLoader.Loaded loaded = new RunLoader().load(run);
            across.add(loaded);
            for (String each : readings(loaded)) {
                Path other = seen.putIfAbsent(each, run);
                if (other != null) {
                    throw new InputException(
                            Place.file(run),
                            "found the same readings as in " + other
                                    + "; expected readings of its own, since a copy says nothing new");
                }
            }
        }
        return across;
    }

    private void add(RunLoader.Loaded loaded) throws InputException {
        for (Map.Entry<Path, String> each : loaded.files().entrySet()) {
            if (!files.containsKey(each.getKey())) {
                files.put(
                        each.getKey(),
                        new InputFile(each.getValue(), each.getKey().toString(), Hash.of(each.getKey())));
            }
        }
        var analysis = new Workup().analyse(loaded.assay());
        notices.addAll(analysis.notices());
        loaded.assay()
                .method()
                .repeats()
                .ifPresent(rule -> rules.put(loaded.assay().name(), rule));
        notices.addAll(loaded.departures());
        results.add(RunResults.of(loaded.assay().name(), new Assessor().assess(analysis), shared));
    }

    /** The readings as text, one a set: one file may hold those of several plates, so files do not tell. */
    private static Set<String> readings(RunLoader.Loaded loaded) {
        Set<String> all = new LinkedHashSet<>();
        for (Taken taken : loaded.assay().readings()) {
            ReadingSeries series = taken.series();
            StringBuilder text = new StringBuilder();
            for (Well well : series.wells()) {
                text.append(well);
                for (int i = 0; i < series.size(well); i++) {
                    boolean number = series.mark(well, i) == Mark.NONE;
                    text.append(' ')
                            .append(
                                    number
                                            ? series.absorbance(well, i)
                                            : series.mark(well, i).word());
                }
            }
            all.add(text.toString());
        }
        return all;
    }

    /** What each run found. */
    List<RunResults> results() {
        return results;
    }

    /** What the user should be told. */
    List<Notice> notices() {
        return notices;
    }

    /** The rule for repeats of each run whose method states one. */
    Map<String, RepeatRule> rules() {
        return rules;
    }

    /** The files that were read. */
    Set<Path> paths() {
        return files.keySet();
    }

    /** Where all this comes from. */
    Provenance provenance(Instant made, ZoneId zone) {
        return new Provenance(Version.text(), made, zone, List.copyOf(files.values()), "");
    }
}
