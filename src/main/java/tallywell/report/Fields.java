package tallywell.report;

import java.io.IOException;
import java.util.OptionalDouble;

/** Takes the fields of one row of a table, in the order of its columns. */
public interface Fields {
    /** A text, kept as it is; may be empty. */
    void text(String text) throws IOException;

    /** A finite number. */
    void number(double number) throws IOException;

    /** No value. */
    void empty() throws IOException;

    /** A number, or no value. */
    default void number(OptionalDouble number) throws IOException {
        if (number.isPresent()) {
            number(number.getAsDouble());
        } else {
            empty();
        }
    }
}
