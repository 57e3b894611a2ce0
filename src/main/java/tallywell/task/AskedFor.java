package tallywell.task;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.method.Run;
import tallywell.quantity.Numbers;
import tallywell.report.Carried;

/** How a report was asked for, as settings that its workbook carries, both ways. */
final class AskedFor {
    private static final String VERSION = "version";
    private static final String TIME = "time";
    private static final String ZONE = "zone";
    private static final String DRAWS = "monte-carlo";
    private static final String SEED = "seed";
    private static final String METHOD = "method";
    private static final String LAYOUT = "layout";
    private static final String SAMPLES = "samples";
    private static final String READINGS = "readings";
    private static final String TRIGGER_AT = "trigger-at";

    private static final Set<String> NAMING = Set.of(METHOD, LAYOUT, SAMPLES, READINGS, TRIGGER_AT);

    private AskedFor() {}

    /** The settings of a report. */
    static List<Carried.Setting> settings(List<Carried.Setting> asked, ReportMaker.Circumstances circumstances) {
        List<Carried.Setting> settings = new ArrayList<>();
        add(settings, VERSION, circumstances.version());
        add(settings, TIME, circumstances.made().toString());
        add(settings, ZONE, circumstances.zone().getId());
        circumstances.draws().ifPresent(draws -> {
            add(settings, DRAWS, Integer.toString(draws.trials()));
            add(settings, SEED, Long.toString(draws.seed()));
        });
        settings.addAll(asked);
        return settings;
    }

    /** How a run without a run file was named. */
    static List<Carried.Setting> asked(AdHocRun run) {
        List<Carried.Setting> settings = new ArrayList<>();
        add(settings, METHOD, run.method());
        add(settings, LAYOUT, run.layout().toString());
        run.samples().ifPresent(samples -> add(settings, SAMPLES, samples.toString()));
        run.files().forEach(file -> add(settings, READINGS, file.toString()));
        run.triggerAtS().forEach(time -> add(settings, TRIGGER_AT, Numbers.plain(time)));
        return settings;
    }

    /** The same of a workbook. */
    static List<Carried.Setting> asked(Carried carried) {
        return carried.settings().stream()
                .filter(each -> NAMING.contains(each.key()))
                .toList();
    }

    private static void add(List<Carried.Setting> settings, String key, String value) {
        settings.add(new Carried.Setting(key, value));
    }

    /**
     * What a report depended on beside its inputs.
     *
     * @throws IllegalArgumentException with a message for the user if the settings do not say so
     */
    static ReportMaker.Circumstances circumstances(Carried carried) {
        try {
            Optional<Draws> draws = carried.setting(DRAWS)
                    .map(trials -> new Draws(Integer.parseInt(trials), Long.parseLong(need(carried, SEED))));
            return new ReportMaker.Circumstances(
                    need(carried, VERSION), Instant.parse(need(carried, TIME)), ZoneId.of(need(carried, ZONE)), draws);
        } catch (DateTimeException | NumberFormatException e) {
            throw new IllegalArgumentException("found a setting that cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** The method of a run that was named on the command line; without a setting it stands in the run file. */
    static Optional<String> method(Carried carried) {
        return carried.setting(METHOD);
    }

    /**
     * The run as it was named on the command line.
     *
     * @param triggers how many triggers its method has
     * @throws IllegalArgumentException with a message for the user if the settings name none
     */
    static Run run(Carried carried, int triggers) {
        try {
            return AdHocRun.run(
                    need(carried, METHOD),
                    need(carried, LAYOUT),
                    carried.setting(SAMPLES),
                    carried.all(READINGS),
                    carried.all(TRIGGER_AT).stream().map(Double::valueOf).toList(),
                    triggers);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("found a setting that cannot be read (" + e.getMessage() + ")", e);
        }
    }

    private static String need(Carried carried, String key) {
        return carried.setting(key).orElseThrow(() -> new IllegalArgumentException("found no setting '" + key + "'"));
    }
}
