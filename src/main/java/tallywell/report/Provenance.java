package tallywell.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where a report comes from.
 *
 * @param version of the program
 * @param made when the report was made
 * @param zone the time zone that people read the time in
 * @param inputs the files it was made from, run first
 * @param options the options of the call in words, or empty
 * @param carried what it takes to make the report again, if it is to be in the workbook
 */
public record Provenance(
        String version, Instant made, ZoneId zone, List<InputFile> inputs, String options, Optional<Carried> carried) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    /** Keeps a copy that cannot change. */
    public Provenance {
        inputs = List.copyOf(inputs);
    }

    /** The same for a report that carries nothing. */
    public Provenance(String version, Instant made, ZoneId zone, List<InputFile> inputs, String options) {
        this(version, made, zone, inputs, options, Optional.empty());
    }

    /**
     * The time with its zone, such as {@code 2026-03-09 14:05:00 (Europe/Zurich, UTC+01:00)}; without a name where the zone
     * is an offset only.
     */
    public String madeText() {
        var local = made.atZone(zone);
        String offset = local.getOffset().getTotalSeconds() == 0
                ? "UTC"
                : "UTC" + local.getOffset().getId();
        boolean named = !(zone instanceof ZoneOffset) && !zone.getId().equals("UTC");
        return TIME.format(local) + (named ? " (" + zone.getId() + ", " + offset + ")" : " (" + offset + ")");
    }
}
