package tallywell.recheck;

/**
 * What stands in one cell. An empty text and an empty cell are the same.
 *
 * @param formula in the form of {@link FormulaText}; empty if the cell holds none
 * @param isNumber whether it holds or shows a number
 * @param number that number, else 0
 * @param text what it holds or shows otherwise, else empty
 * @param format how a number is shown, as spreadsheets write it
 */
record Cell(String formula, boolean isNumber, double number, String text, String format) {
    static final Cell EMPTY = new Cell("", false, 0, "");

    /** A cell that shows what it holds. */
    Cell(String formula, boolean isNumber, double number, String text) {
        this(formula, isNumber, number, text, "General");
    }

    boolean isEmpty() {
        return formula.isEmpty() && !isNumber && text.isEmpty();
    }

    boolean hasFormula() {
        return !formula.isEmpty();
    }

    /** What it shows, in the words of a message. */
    String shown() {
        if (isNumber) {
            return number == Math.rint(number) && Math.abs(number) < 1e15
                    ? Long.toString((long) number)
                    : Double.toString(number);
        }
        return text.isEmpty() ? "empty" : "'" + (text.length() > 60 ? text.substring(0, 60) + "…" : text) + "'";
    }

    /**
     * Whether it shows the same as another, formulas aside.
     *
     * @param relative by how much numbers may differ, relative to the larger one
     * @param absolute by how much they may differ at any rate
     */
    boolean showsAs(Cell other, double relative, double absolute) {
        if (isNumber != other.isNumber) {
            return false;
        }
        if (!isNumber) {
            return text.equals(other.text);
        }
        double apart = Math.abs(number - other.number);
        return apart <= absolute || apart <= relative * Math.max(Math.abs(number), Math.abs(other.number));
    }
}
