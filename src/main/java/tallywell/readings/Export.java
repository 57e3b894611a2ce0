package tallywell.readings;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.quantity.Numbers;

/**
 * The readings of a file.
 *
 * @param file the file
 * @param blocks at least one
 * @param explanation what was understood
 */
public record Export(Path file, List<Block> blocks, Explanation explanation) {
    /** Takes a copy of the list. */
    public Export {
        blocks = List.copyOf(blocks);
    }

    Export withReadAt(Optional<LocalDateTime> moment) {
        return new Export(
                file, blocks.stream().map(each -> each.withReadAt(moment)).toList(), explanation);
    }

    /**
     * Picks the one block that a run takes.
     *
     * @param choice what the run file says
     * @param methodWavelengthNm the wavelength of the method; used where the choice leaves several, if all of them state theirs
     * @throws InputException if none or more than one remains, or if the one that remains was read at another wavelength
     *     than the method asks for and the choice does not name it; the message names the key that decides
     */
    public Block one(Choice choice, OptionalDouble methodWavelengthNm) throws InputException {
        List<Block> fitting = choice.among(blocks);
        if (fitting.isEmpty()) {
            throw refused("found no block that fits what the run asks for; expected one of these", blocks, "");
        }
        if (choice.block().isPresent() || choice.wavelengthNm().isPresent() || methodWavelengthNm.isEmpty()) {
            return only(fitting);
        }
        double nm = methodWavelengthNm.getAsDouble();
        List<Block> stated = fitting.stream()
                .filter(block -> block.wavelengthNm().isPresent())
                .toList();
        List<Block> atMethod =
                fitting.stream().filter(block -> Choice.isAt(block, nm)).toList();
        List<Block> unstated =
                fitting.stream().filter(block -> block.wavelengthNm().isEmpty()).toList();
        if (!atMethod.isEmpty() && unstated.isEmpty()) {
            return only(atMethod);
        }
        if (!atMethod.isEmpty()) {
            // What states no wavelength may be the readings as well, so the wavelength must not decide.
            throw refused(
                    "found a block at " + Numbers.plain(nm)
                            + " nm, the wavelength of the method, beside others that state no wavelength; expected one",
                    fitting,
                    differ(fitting, Block::plate) ? "plate:" : "block:");
        }
        if (!stated.isEmpty() && unstated.isEmpty()) {
            throw refused(
                    "found no readings at " + Numbers.plain(nm)
                            + " nm, the wavelength of the method; expected one of these; name it if it is right",
                    fitting,
                    "wavelength:");
        }
        return only(fitting);
    }

    private Block only(List<Block> fitting) throws InputException {
        if (fitting.size() == 1) {
            return fitting.get(0);
        }
        String key = differ(fitting, Block::plate)
                ? "plate:"
                : differ(fitting, block -> block.wavelengthNm().toString()) ? "wavelength:" : "block:";
        throw refused("found " + fitting.size() + " blocks of readings; expected one", fitting, key);
    }

    private static boolean differ(List<Block> blocks, java.util.function.Function<Block, String> by) {
        return blocks.stream().map(by).distinct().count() == blocks.size();
    }

    private InputException refused(String found, List<Block> candidates, String key) {
        String remedy = key.isEmpty()
                ? ""
                : "; choose with " + key + " in the run file" + (key.equals("block:") ? "" : ", or block:");
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.error(Place.file(file), found + remedy));
        notices.addAll(Candidates.list(candidates));
        return new InputException(notices);
    }
}
