package tallywell.across;

/**
 * A source that results of several plates can have in common: they do where all three parts are the same.
 *
 * @param label in the words of a report, such as {@code sample volume}
 * @param name what tells it from others of the same label, such as the pipette setting
 * @param standardUncertainty its size as the method states it; where methods state different ones it is not the same
 */
public record Common(String label, String name, double standardUncertainty) {
    /** The source in words. */
    String words() {
        if (name.startsWith(label)) {
            return name;
        }
        return name.isEmpty() ? label : label + " (" + name + ")";
    }
}
