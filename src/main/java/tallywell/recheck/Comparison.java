package tallywell.recheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.DataFormatter;
import tallywell.recheck.Difference.Kind;

/**
 * Compares the cells of a workbook with those of one made anew: every text, every number, every formula and what it shows, on
 * every sheet, and whether something shows it as something else: number formats by what they make of the number, hidden sheets, merged
 * cells, conditional formats, links to other files. Other looks, pictures, charts, names and properties are not compared.
 */
public final class Comparison {
    /** What another program computes from the same formula may differ in the last digits by its order of summation. */
    private static final double COMPUTED = 1e-9;

    /** Below this nothing that we compute means anything: differences of absorbances, and what follows from them. */
    private static final double NOTHING = 1e-12;

    /** Programs save 15 digits of a number at least (ECMA-376 leaves it to them). */
    private static final double TYPED = 1e-14;

    private static final String READINGS = "Readings";

    private final WorkbookCells found;
    private final WorkbookCells expected;
    private final List<Difference> differences = new ArrayList<>();
    private final DataFormatter formatter = new DataFormatter(Locale.ROOT);

    private Comparison(WorkbookCells found, WorkbookCells expected) {
        this.found = found;
        this.expected = expected;
    }

    /**
     * Compares.
     *
     * @param found what a file holds
     * @param expected what it should hold
     * @return where they differ, what matters most first; empty if nowhere
     */
    public static List<Difference> of(WorkbookCells found, WorkbookCells expected) {
        Comparison comparison = new Comparison(found, expected);
        comparison.sheets();
        return comparison.differences.stream()
                .sorted(Comparator.comparing(Difference::kind))
                .toList();
    }

    private void sheets() {
        covers("the workbook has ", found.covers(), expected.covers());
        for (String name : expected.names()) {
            Optional<CellSheet> sheet = found.sheet(name);
            if (sheet.isEmpty()) {
                differences.add(new Difference(Kind.SHEET, "the sheet " + name + " is missing"));
            } else {
                cells(name, sheet.get(), expected.sheet(name).orElseThrow());
            }
        }
        for (String name : found.names()) {
            if (expected.sheet(name).isEmpty()) {
                differences.add(new Difference(Kind.SHEET, "the sheet '" + name + "' was added"));
            }
        }
    }

    private void covers(String begin, SortedSet<String> is, SortedSet<String> was) {
        SortedSet<String> more = new TreeSet<>(is);
        more.removeAll(was);
        more.forEach(each -> add(Kind.SHOWN, begin + each));
    }

    private void cells(String name, CellSheet is, CellSheet was) {
        covers("the sheet " + name + " ", is.covers(), was.covers());
        SheetWords words = new SheetWords(name, was);
        SortedSet<Integer> rows = new TreeSet<>(was.rows());
        rows.addAll(is.rows());
        for (int row : rows) {
            SortedSet<Integer> columns = new TreeSet<>(was.columns(row));
            columns.addAll(is.columns(row));
            for (int column : columns) {
                compare(words, row, column, is.at(row, column), was.at(row, column));
            }
        }
    }

    private void compare(SheetWords words, int row, int column, Cell is, Cell was) {
        String place = words.place(row, column);
        String change = "was " + was.shown() + ", is " + is.shown();
        if (was.hasFormula() && !is.hasFormula()) {
            add(
                    Kind.OVERWRITTEN,
                    place + "a formula was overwritten: it gave " + was.shown() + ", now there is " + is.shown());
        } else if (!was.hasFormula() && is.hasFormula()) {
            add(Kind.FORMULA, place + "a formula was put in place of " + was.shown() + ": =" + is.formula());
        } else if (!was.formula().equals(is.formula())) {
            add(Kind.FORMULA, place + "the formula was changed: was =" + was.formula() + ", is =" + is.formula());
        } else if (was.hasFormula()) {
            if (!is.showsAs(was, COMPUTED, NOTHING)) {
                add(Kind.RESULT, place + "the formula shows another result: " + change);
            }
        } else if (!is.showsAs(was, TYPED, 0)) {
            boolean reading = words.sheet().equals(READINGS) && words.isReading(row, column);
            add(reading ? Kind.READING : Kind.VALUE, place + (reading ? "the reading was changed: " : "") + change);
        }
        if (is.isNumber() && was.isNumber() && !is.format().equals(was.format())) {
            String before = text(was.number(), was.format());
            String now = text(was.number(), is.format());
            if (!now.equals(before)) {
                add(
                        Kind.SHOWN,
                        place + "the number format '" + is.format() + "' stands in place of '" + was.format()
                                + "' and shows something else");
            }
        }
    }

    /** A number as a format shows it; the place of the format in a list matters to dates only. */
    private String text(double number, String format) {
        return formatter.formatRawCellContents(number, -1, format).strip();
    }

    private void add(Kind kind, String text) {
        differences.add(new Difference(kind, text));
    }
}
