package tallywell.readings;

import java.util.Collection;
import java.util.List;
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

    /**
     * The blocks that fit. A wavelength sorts out nothing where the file states none: then the user's word adds what the
     * file does not say.
     */
    List<Block> among(Collection<Block> blocks) {
        boolean stated = blocks.stream().anyMatch(each -> each.wavelengthNm().isPresent());
        return blocks.stream()
                .filter(each -> block.isEmpty() || block.getAsInt() == each.number())
                .filter(each -> plate.isEmpty() || plate.get().strip().equalsIgnoreCase(each.plate()))
                .filter(each -> wavelengthNm.isEmpty() || !stated || isAt(each, wavelengthNm.getAsDouble()))
                .toList();
    }

    /** The blocks that fit, and those that only lack the wavelength: they may have been read at any. */
    List<Block> amongUnstated(Collection<Block> blocks) {
        List<Block> fitting = among(blocks);
        return new Choice(block, plate, OptionalDouble.empty())
                .among(blocks).stream()
                        .filter(each -> each.wavelengthNm().isEmpty() || fitting.contains(each))
                        .toList();
    }

    static boolean isAt(Block candidate, double nm) {
        return candidate.wavelengthNm().isPresent()
                && Math.abs(candidate.wavelengthNm().getAsDouble() - nm) <= SAME_NM;
    }
}
