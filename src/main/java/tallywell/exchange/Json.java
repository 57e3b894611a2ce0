package tallywell.exchange;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Numbers;

/**
 * JSON in the making: UTF-8, a line each for members of objects, two blanks a level. Numbers are finite and have as many
 * digits as it takes to read back the same double; what has no value is null. The same calls give the same bytes.
 *
 * <p>Source: RFC 8259.
 */
final class Json implements Closeable {
    private final JsonGenerator generator;

    /**
     * Starts a document.
     *
     * @param out where to; closed with the document
     */
    Json(OutputStream out) throws IOException {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        Separators colon = Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER);
        generator = new JsonFactory().createGenerator(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        generator.setPrettyPrinter(new DefaultPrettyPrinter(colon).withObjectIndenter(lines));
    }

    /** What stands inside an object or an array. */
    @FunctionalInterface
    interface Inside {
        void write() throws IOException;
    }

    /** How one item of an array is written. */
    @FunctionalInterface
    interface Item<T> {
        void write(T item) throws IOException;
    }

    void begin() throws IOException {
        generator.writeStartObject();
    }

    void end() throws IOException {
        generator.writeEndObject();
    }

    void beginArray(String name) throws IOException {
        generator.writeArrayFieldStart(name);
    }

    void endArray() throws IOException {
        generator.writeEndArray();
    }

    /** An object that stands alone or in an array. */
    void object(Inside inside) throws IOException {
        begin();
        inside.write();
        end();
    }

    void object(String name, Inside inside) throws IOException {
        generator.writeFieldName(name);
        object(inside);
    }

    /** An array of objects. */
    <T> void objects(String name, Collection<T> items, Item<T> item) throws IOException {
        beginArray(name);
        for (T each : items) {
            object(() -> item.write(each));
        }
        endArray();
    }

    void texts(String name, Collection<String> texts) throws IOException {
        beginArray(name);
        for (String text : texts) {
            generator.writeString(text);
        }
        endArray();
    }

    void text(String name, String text) throws IOException {
        generator.writeStringField(name, text);
    }

    /** A text, or null where it is absent. */
    void text(String name, Optional<String> text) throws IOException {
        if (text.isPresent()) {
            text(name, text.get());
        } else {
            generator.writeNullField(name);
        }
    }

    /** A text, or null where it is empty. */
    void textOrNull(String name, String text) throws IOException {
        text(name, text.isEmpty() ? Optional.empty() : Optional.of(text));
    }

    void bool(String name, boolean value) throws IOException {
        generator.writeBooleanField(name, value);
    }

    void number(String name, long number) throws IOException {
        generator.writeNumberField(name, number);
    }

    void number(String name, double number) throws IOException {
        generator.writeFieldName(name);
        number(number);
    }

    /** A number, or null. */
    void number(String name, OptionalDouble number) throws IOException {
        if (number.isPresent()) {
            number(name, number.getAsDouble());
        } else {
            generator.writeNullField(name);
        }
    }

    void numbers(double[] numbers) throws IOException {
        generator.writeStartArray();
        for (double each : numbers) {
            number(each);
        }
        generator.writeEndArray();
    }

    private void number(double number) throws IOException {
        if (!(Math.abs(number) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("number must be finite but was " + number);
        }
        generator.writeNumber(Numbers.plain(number));
    }

    @Override
    public void close() throws IOException {
        generator.close();
    }
}
