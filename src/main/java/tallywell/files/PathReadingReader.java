package tallywell.files;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.method.InputQuantity;
import tallywell.method.PathReading;
import tallywell.method.Run;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;
import tallywell.quantity.Unit;

/** Reads what a run says under {@code path-reading}. */
final class PathReadingReader {
    private static final String PAIR =
            "'one-centimetre: {peak: 0.341, beside: 0.158}', your own reading of 1 cm of water";

    private PathReadingReader() {}

    static Optional<PathReading> of(YamlMapping top) throws InputException {
        Optional<YamlNode> node = top.find("path-reading");
        if (node.isEmpty()) {
            return Optional.empty();
        }
        YamlMapping keys = node.get()
                .mapping("two readings and one of 1 cm, with the keys peak, beside, one-centimetre, uncertainty")
                .only("peak", "beside", "one-centimetre", "uncertainty");
        Run.Reading peak = reading(keys, "peak", "977 nm");
        Run.Reading beside = reading(keys, "beside", "900 nm");
        YamlNode one = keys.need("one-centimetre", PAIR);
        YamlMapping pair = one.mapping(PAIR).only("peak", "beside");
        double ofPeak = pair.need("peak", PAIR).number();
        double ofBeside = pair.need("beside", PAIR).number();
        if (!(ofPeak > ofBeside)) {
            throw one.wrong("found 'peak: " + pair.need("peak", "").text() + "' and 'beside: "
                    + pair.need("beside", "").text() + "'; expected more at the peak than beside it");
        }
        return Optional.of(new PathReading(
                peak,
                beside,
                ofPeak,
                ofBeside,
                UncertaintyReader.spread(
                        keys.need(
                                "uncertainty",
                                "'uncertainty: {standard: 1 %}' of the difference under 'one-centimetre'"),
                        InputQuantity.LIGHT_PATH)));
    }

    private static Run.Reading reading(YamlMapping top, String key, String wavelength) throws InputException {
        String example = "'" + key + ": {file: after.csv, wavelength: " + wavelength + "}'";
        YamlNode node = top.need(key, example);
        YamlMapping keys = node.mapping(example).only("file", "plate", "block", "wavelength", "same-plate");
        Picked picked = Picked.of(keys);
        return new Run.Reading(
                picked.file(),
                false,
                List.of(),
                picked.plate(),
                picked.block(),
                picked.wavelengthNm(),
                OptionalDouble.empty(),
                node.line(),
                picked.samePlate());
    }

    /**
     * One set of readings of an export, by the keys that pick it.
     *
     * @param file path as typed
     * @param plate which plate
     * @param block which block, from 1
     * @param wavelengthNm which wavelength, in nm
     * @param samePlate why it is the plate of the run although the export speaks against it
     */
    record Picked(
            String file,
            Optional<String> plate,
            OptionalInt block,
            OptionalDouble wavelengthNm,
            Optional<String> samePlate) {
        private static final int MOST_BLOCKS = 10_000;

        static Picked of(YamlMapping keys) throws InputException {
            Optional<YamlNode> plate = keys.find("plate");
            Optional<YamlNode> block = keys.find("block");
            Optional<YamlNode> wavelength = keys.find("wavelength");
            Optional<YamlNode> samePlate = keys.find("same-plate");
            return new Picked(
                    keys.need("file", "'file: before.csv'").text().strip(),
                    plate.isPresent() ? Optional.of(plate.get().text().strip()) : Optional.empty(),
                    block.isPresent() ? OptionalInt.of(block.get().count(MOST_BLOCKS)) : OptionalInt.empty(),
                    wavelength.isPresent()
                            ? OptionalDouble.of(
                                    wavelength.get().quantity(Kind.LENGTH).in(Unit.NANOMETRE))
                            : OptionalDouble.empty(),
                    samePlate.isPresent() ? Optional.of(samePlate.get().freeText()) : Optional.empty());
        }
    }
}
