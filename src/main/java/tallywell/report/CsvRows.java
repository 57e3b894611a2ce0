package tallywell.report;

import java.io.Closeable;
import java.io.Flushable;
import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tallywell.quantity.Numbers;

/**
 * Rows of a CSV file: comma, decimal point, quoting after RFC 4180, numbers with as many digits as it takes to read the
 * same double back.
 */
final class CsvRows implements Fields, Closeable {
    private final CSVPrinter printer;

    CsvRows(Appendable out, List<String> titles) throws IOException {
        printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(titles);
    }

    @Override
    public void text(String text) throws IOException {
        printer.print(text);
    }

    @Override
    public void number(double number) throws IOException {
        printer.print(Numbers.plain(number));
    }

    @Override
    public void empty() throws IOException {
        printer.print("");
    }

    void end() throws IOException {
        printer.println();
    }

    /** Closes what was written to, if it can be closed. */
    @Override
    public void close() throws IOException {
        if (printer.getOut() instanceof Flushable) {
            printer.flush();
        }
        printer.close();
    }
}
