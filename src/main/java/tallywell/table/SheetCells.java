package tallywell.table;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.apache.poi.xssf.model.SharedStrings;
import org.jspecify.annotations.Nullable;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;
import tallywell.notice.InputException;

/** Takes up the cells of one sheet of a workbook as its XML passes by. Formulas count with the value stored for them. */
final class SheetCells extends DefaultHandler {
    private final CellCollector collector;
    private final Strings strings;
    private final Clocks clocks;
    private final BitSet numbers = new BitSet();
    private final StringBuilder text = new StringBuilder();
    private boolean inText;
    private @Nullable String formula;
    private boolean hasValue;
    private String type = "";
    private int style;
    private int column;

    /** The rows that the workbook hides, counted from 1. */
    private final List<Integer> hiddenRows = new ArrayList<>();

    private boolean hiddenColumns;

    SheetCells(CellCollector collector, Strings strings, Clocks clocks) {
        this.collector = collector;
        this.strings = strings;
        this.clocks = clocks;
    }

    Table.Cells cells() {
        return new Table.Cells(collector, numbers, true);
    }

    @Override
    public void startElement(String uri, String name, String qName, Attributes attributes) throws SAXException {
        switch (name) {
            case "row" -> {
                startRow(attributes.getValue("r"));
                if (isTrue(attributes.getValue("hidden"))) {
                    hiddenRows.add(collector.rows() + 1);
                }
            }
            case "col" -> hiddenColumns |= isTrue(attributes.getValue("hidden"));
            case "c" -> startCell(attributes);
            case "v", "t" -> {
                inText = true;
                hasValue = true;
            }
            case "f" -> {
                inText = true;
                formula = "";
            }
            default -> {}
        }
    }

    @Override
    public void characters(char[] characters, int start, int length) {
        if (inText) {
            text.append(characters, start, length);
        }
    }

    @Override
    public void endElement(String uri, String name, String qName) throws SAXException {
        switch (name) {
            case "v" -> inText = false;
            case "t" -> inText = false;
            case "f" -> {
                inText = false;
                formula = text.toString();
                text.setLength(0);
            }
            case "c" -> endCell();
            case "row" -> endRow();
            default -> {}
        }
    }

    private static boolean isTrue(@Nullable String text) {
        return "1".equals(text) || "true".equals(text);
    }

    /** What the sheet hides from whoever looks at it, in the words of a message. */
    List<String> hidden() {
        List<String> hidden = new ArrayList<>();
        if (!hiddenRows.isEmpty()) {
            hidden.add(
                    hiddenRows.size() == 1
                            ? "row " + hiddenRows.get(0) + " is hidden; it was read like any other"
                            : hiddenRows.size() + " rows are hidden, the first is row " + hiddenRows.get(0)
                                    + "; they were read like any other");
        }
        if (hiddenColumns) {
            hidden.add("columns are hidden; they were read like any other");
        }
        return hidden;
    }

    private void startRow(@Nullable String number) throws SAXException {
        int row = number != null && number.matches("\\d{1,7}") ? Integer.parseInt(number) - 1 : collector.rows();
        if (row < collector.rows()) {
            throw new SAXException("rows run backwards");
        }
        while (collector.rows() < row) {
            endRow();
        }
    }

    private void startCell(Attributes attributes) {
        String reference = attributes.getValue("r");
        column = reference == null ? collector.width() : columnOf(reference);
        type = attributes.getValue("t") == null ? "n" : attributes.getValue("t");
        String of = attributes.getValue("s");
        style = of != null && of.matches("\\d{1,9}") ? Integer.parseInt(of) : 0;
        text.setLength(0);
        hasValue = false;
        formula = null;
    }

    private static int columnOf(String reference) {
        int column = 0;
        for (int i = 0; i < Math.min(reference.length(), 3) && Character.isLetter(reference.charAt(i)); i++) {
            column = column * 26 + (reference.charAt(i) & ~0x20) - 'A' + 1;
        }
        return column - 1;
    }

    private void endCell() throws SAXException {
        String value = value();
        if (value.isEmpty()) {
            return;
        }
        if (column < collector.width()) {
            throw new SAXException("cells run backwards");
        }
        try {
            while (collector.width() < column) {
                collector.empty();
            }
            collector.cell(value);
        } catch (InputException e) {
            throw new Stopped(e);
        }
    }

    private String value() throws SAXException {
        String raw = text.toString();
        if (!hasValue) {
            // A formula that nothing has calculated yet has no value; its text shows why.
            return formula == null ? "" : "=" + formula;
        }
        return switch (type) {
            case "s" -> strings.get(raw);
            case "b" -> raw.equals("1") ? "TRUE" : "FALSE";
            case "n" -> number(raw);
            default -> raw;
        };
    }

    private String number(String raw) {
        double value;
        try {
            value = Double.parseDouble(raw);
        } catch (NumberFormatException e) {
            return raw;
        }
        var shown = clocks.text(value, style);
        if (shown.isPresent()) {
            return shown.get();
        }
        numbers.set(collector.next() + Math.max(0, column - collector.width()));
        return plain(value);
    }

    /** The shortest decimal text that reads back as the same number, without exponent where that is readable. */
    static String plain(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return Long.toString((long) value);
        }
        String text = Double.toString(value);
        double size = Math.abs(value);
        return size >= 1e-6 && size < 1e15
                ? new BigDecimal(text).stripTrailingZeros().toPlainString()
                : text;
    }

    private void endRow() throws SAXException {
        try {
            collector.endRow();
        } catch (InputException e) {
            throw new Stopped(e);
        }
    }

    /** The texts that cells point to by number. */
    static final class Strings {
        private final SharedStrings strings;

        Strings(SharedStrings strings) {
            this.strings = strings;
        }

        String get(String index) throws SAXException {
            if (!index.matches("\\d{1,9}")) {
                throw new SAXException("a cell points to a text without a number");
            }
            try {
                // The counts that the part may state are optional and need not be true.
                return strings.getItemAt(Integer.parseInt(index)).getString();
            } catch (IndexOutOfBoundsException e) {
                throw new SAXException("a cell points to a text that is not there", e);
            }
        }
    }

    /** Carries a reason to stop through the XML parser. */
    static final class Stopped extends SAXException {
        private static final long serialVersionUID = 1L;
        private final InputException reason;

        Stopped(InputException reason) {
            super(reason);
            this.reason = reason;
        }

        InputException reason() {
            return reason;
        }
    }
}
