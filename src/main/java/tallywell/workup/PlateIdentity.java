package tallywell.workup;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * What tells which plate a set of readings is of.
 *
 * @param plate name or barcode that the export gives its plate; empty if none
 * @param readAt when the export says that it was read, if it does
 * @param samePlate why a person says that it is the plate of the run although something speaks against it
 */
public record PlateIdentity(String plate, Optional<LocalDateTime> readAt, Optional<String> samePlate) {
    /** Of readings that nothing is known of. */
    public static final PlateIdentity UNKNOWN = new PlateIdentity("", Optional.empty(), Optional.empty());
}
