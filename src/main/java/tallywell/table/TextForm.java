package tallywell.table;

/**
 * How a text file is written.
 *
 * @param encoding in the words of a message, such as {@code UTF-8}
 * @param delimiter what stands between the cells
 */
public record TextForm(String encoding, Delimiter delimiter) {}
