package tallywell.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Where a report comes from.
 *
 * @param version of the program
 * @param made when the report was made
 * @param zone the time zone that people read the time in
 * @param inputs the files it was made from, run first
 * @param options the options of the call in words, or empty
 */
public record Provenance(String version, Instant made, ZoneId zone, List<InputFile> inputs, String options) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    /** Keeps a copy that cannot change. */
    public Provenance {
        inputs = List.copyOf(inputs);
    }

    /** The time with its zone, such as {@code 2026-03-09 14:05:00 (Europe/Zurich, UTC+01:00)}. */
    public String madeText() {
        var local = made.atZone(zone);
        String offset = local.getOffset().getTotalSeconds() == 0
                ? "UTC"
                : "UTC" + local.getOffset().getId();
        String name = zone.getId();
        return TIME.format(local)
                + (name.equals("Z") || name.equals("UTC") ? " (UTC)" : " (" + name + ", " + offset + ")");
    }
}
