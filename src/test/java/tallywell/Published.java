package tallywell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * A table of figures from outside the project, with the source that its header states, so that a failing check names
 * the source.
 */
public final class Published {
    private final String source;
    private final List<String> columns;
    private final List<String[]> rows;

    private Published(String source, List<String> columns, List<String[]> rows) {
        this.source = source;
        this.columns = columns;
        this.rows = rows;
    }

    /** Reads {@code reference/<set>.csv} from the test resources. */
    public static Published read(String set) {
        String name = "/reference/" + set + ".csv";
        try (InputStream in = Published.class.getResourceAsStream(name)) {
            assertThat(in).as(name).isNotNull();
            List<String> lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .toList();
            String source = String.join(
                    " ",
                    lines.stream()
                            .filter(line -> line.startsWith("#"))
                            .map(line -> line.substring(1).strip())
                            .toList());
            List<String[]> rows = lines.stream()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(line -> line.split(",", -1))
                    .toList();
            assertThat(source).as("header of " + name).startsWith("Source:");
            return new Published(source, Arrays.asList(rows.get(0)), rows.subList(1, rows.size()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rows in which a column holds a text. */
    public Published where(String column, String text) {
        return where(row -> row[index(column)].equals(text));
    }

    /** The first rows. */
    public Published first(int count) {
        return new Published(source, columns, rows.subList(0, count));
    }

    private Published where(Predicate<String[]> wanted) {
        return new Published(source, columns, rows.stream().filter(wanted).toList());
    }

    /** How many rows there are. */
    public int size() {
        return rows.size();
    }

    /** The source, for messages. */
    public String source() {
        return source;
    }

    /** A column as numbers. */
    public double[] column(String name) {
        return rows.stream()
                .mapToDouble(row -> Double.parseDouble(row[index(name)]))
                .toArray();
    }

    /** One number. */
    public double number(int row, String column) {
        return Double.parseDouble(text(row, column));
    }

    /** One text. */
    public String text(int row, String column) {
        return rows.get(row)[index(column)];
    }

    private int index(String column) {
        int index = columns.indexOf(column);
        assertThat(index).as("column " + column + " of " + columns).isNotNegative();
        return index;
    }

    /** Checks that a value agrees with a figure of this table to some significant digits. */
    public void check(String what, double value, double expected, int digits) {
        assertThat(agreement(value, expected))
                .as(String.format(Locale.ROOT, "digits of %s: %s against %s. %s", what, value, expected, source))
                .isGreaterThanOrEqualTo(digits);
    }

    /** To how many significant digits a value agrees: minus the logarithm of its relative error, 17 at most. */
    public static double agreement(double value, double expected) {
        double error = expected == 0 ? Math.abs(value) : Math.abs(value - expected) / Math.abs(expected);
        return error == 0 ? 17 : Math.min(17, -Math.log10(error));
    }
}
