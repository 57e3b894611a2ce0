package tallywell.paper;

/**
 * A column of a table.
 *
 * @param title at its head
 * @param width in points
 * @param toTheRight whether its texts end at its right edge, as numbers do
 */
record Column(String title, double width, boolean toTheRight) {
    static Column text(String title, double width) {
        return new Column(title, width, false);
    }

    static Column number(String title, double width) {
        return new Column(title, width, true);
    }
}
