package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import tallywell.quantity.CellText;
import tallywell.quantity.Numbers;

/**
 * Rows of a CSV file: comma, decimal point, numbers with as many digits as it takes to read the same double back.
 *
 * <p>Source: RFC 4180, section 2: records end with CRLF; fields with commas, double quotes or line breaks stand in double
 * quotes, and a double quote inside them is written twice. Blanks at an end, which some readers strip, are quoted too.
 * Texts that spreadsheets would take for formulas are written as {@link CellText} says.
 */
public final class CsvRows implements Fields, Closeable {
    private final Appendable out;
    private boolean first = true;

    /**
     * Starts a table with its header row.
     *
     * @param out where to; closed with the table if it can be
     */
    public CsvRows(Appendable out, List<String> titles) throws IOException {
        this.out = out;
        for (String title : titles) {
            text(title);
        }
        end();
    }

    @Override
    public void text(String meant) throws IOException {
        separate();
        String text = CellText.shown(meant);
        if (!needsQuotes(text)) {
            out.append(text);
            return;
        }
        out.append('"').append(text.replace("\"", "\"\"")).append('"');
    }

    private static boolean needsQuotes(String text) {
        return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n') || !text.equals(text.strip());
    }

    @Override
    public void number(double number) throws IOException {
        separate();
        out.append(Numbers.plain(number));
    }

    @Override
    public void empty() throws IOException {
        separate();
    }

    private void separate() throws IOException {
        if (!first) {
            out.append(',');
        }
        first = false;
    }

    /** Ends a row. */
    public void end() throws IOException {
        out.append("\r\n");
        first = true;
    }

    /** Closes what was written to, if it can be closed. */
    @Override
    public void close() throws IOException {
        if (out instanceof Closeable closeable) {
            closeable.close();
        }
    }
}
