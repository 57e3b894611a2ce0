package tallywell.readings;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the user decided where a file holds more than one block of readings. All optional.
 *
 * @param block number of the block, from 1
 * @param plate name of the plate
 * @param wavelengthNm the wavelength
 */
public record Choice(OptionalInt block, Optional<String> plate, OptionalDouble wavelengthNm) {
    /** Two wavelengths that differ by no more are the same. */
    private static final double SAME_NM = 0.5;

    /** Nothing decided. */
    public static Choice none() {
        return new Choice(OptionalInt.empty(), Optional.empty(), OptionalDouble.empty());
    }

    /** The same with a block, counted from 1. */
    public Choice withBlock(int number) {
        return new Choice(OptionalInt.of(number), plate, wavelengthNm);
    }

    /** The same with a plate. */
    public Choice withPlate(String name) {
        return new Choice(block, Optional.of(name), wavelengthNm);
    }

    /** The same with a wavelength. */
    public Choice withWavelengthNm(double nm) {
        return new Choice(block, plate, OptionalDouble.of(nm));
    }

    boolean fits(Block candidate) {
        return (block.isEmpty() || block.getAsInt() == candidate.number())
                && (plate.isEmpty() || plate.get().strip().equalsIgnoreCase(candidate.plate()))
                && (wavelengthNm.isEmpty() || isAt(candidate, wavelengthNm.getAsDouble()));
    }

    /** Whether a block fits as far as it says: one that states no wavelength may have been read at any. */
    boolean mayFit(Block candidate) {
        return fits(candidate)
                || candidate.wavelengthNm().isEmpty()
                        && new Choice(block, plate, OptionalDouble.empty()).fits(candidate);
    }

    static boolean isAt(Block candidate, double nm) {
        return candidate.wavelengthNm().isPresent()
                && Math.abs(candidate.wavelengthNm().getAsDouble() - nm) <= SAME_NM;
    }
}
