package tallywell.readings;

import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/** One table of readings: one plate at one wavelength, over its times. */
public final class Block {
    private final int number;
    private final Origin origin;
    private final ReadingSeries series;
    private final FileOrder order;
    private final Optional<LocalDateTime> readAt;

    Block(int number, Origin origin, ReadingSeries series, FileOrder order) {
        this(number, origin, series, order, Optional.empty());
    }

    private Block(int number, Origin origin, ReadingSeries series, FileOrder order, Optional<LocalDateTime> readAt) {
        this.number = number;
        this.origin = origin;
        this.series = series;
        this.order = order;
        this.readAt = readAt;
    }

    /**
     * What names a block, and where it stands.
     *
     * @param form how it is written, in the words of a message
     * @param where its rows, in the words of a message
     * @param plate the name of the plate; empty if the file gives none
     * @param label what else names it; empty if nothing does
     * @param wavelengthNm the wavelength
     * @param timeS the time of an end point in s, if the file states one
     * @param processed whether the file says that something was done to the readings
     * @param wholePlate whether the form shows the whole plate
     */
    record Origin(
            String form,
            String where,
            String plate,
            String label,
            OptionalDouble wavelengthNm,
            OptionalDouble timeS,
            boolean processed,
            boolean wholePlate) {}

    /** Number of the block in its file, from 1. */
    public int number() {
        return number;
    }

    /** The name of the plate; empty if the file gives none. */
    public String plate() {
        return origin.plate();
    }

    /** What the file calls these readings; empty if nothing. */
    public String label() {
        return origin.label();
    }

    /** The wavelength in nm, if the file states it. */
    public OptionalDouble wavelengthNm() {
        return origin.wavelengthNm();
    }

    /** The time of an end point in s, if the file states one; the times of a series are in the series. */
    public OptionalDouble timeS() {
        return origin.timeS();
    }

    /** Whether the file says that something was subtracted from the readings, or that they were scaled. */
    public boolean isProcessed() {
        return origin.processed();
    }

    /**
     * Whether the export shows which plate it is: a grid of its size. If not, the plate of the series is the smallest
     * that holds the wells.
     */
    public boolean wholePlate() {
        return origin.wholePlate();
    }

    /** How the block is written, in the words of a message. */
    public String form() {
        return origin.form();
    }

    /** Where it stands in the file, in the words of a message. */
    public String where() {
        return origin.where();
    }

    /** When the file says that it was read: date and time of day; empty if it does not. */
    public Optional<LocalDateTime> readAt() {
        return readAt;
    }

    Block withReadAt(Optional<LocalDateTime> moment) {
        return new Block(number, origin, series, order, moment);
    }

    /** The readings. */
    public ReadingSeries series() {
        return series;
    }

    FileOrder order() {
        return order;
    }

    /** One line that tells the block from others, with its first reading. */
    public String summary() {
        StringBuilder text = new StringBuilder("block " + number + ": ");
        text.append(plate().isEmpty() ? "" : "plate '" + plate() + "', ");
        wavelengthNm().ifPresent(nm -> text.append(Numbers.plain(nm)).append(" nm, "));
        text.append(label().isEmpty() ? "" : "'" + label() + "', ");
        text.append(isProcessed() ? "processed, " : "");
        text.append(where());
        Well first = series.wells().get(0);
        Mark mark = series.mark(first, 0);
        text.append(", ").append(first).append(" = ");
        text.append(mark == Mark.NONE ? Numbers.plain(series.absorbance(first, 0)) : mark.word());
        if (series.isTimed() && series.size(first) > 1) {
            text.append(", times from ")
                    .append(Numbers.plain(series.timeS(first, 0)))
                    .append(" s to ")
                    .append(Numbers.plain(series.timeS(first, series.size(first) - 1)))
                    .append(" s");
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return summary();
    }
}
