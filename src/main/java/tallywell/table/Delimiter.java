package tallywell.table;

/** What stands between the cells of a text file. In the order of preference where evidence is equal. */
public enum Delimiter {
    /** A tab. */
    TAB("tab", '\t'),
    /** A semicolon. */
    SEMICOLON("semicolon", ';'),
    /** A vertical bar. */
    PIPE("vertical bar", '|'),
    /** A comma. */
    COMMA("comma", ','),
    /** Two blanks or more; single blanks belong to the cell. */
    WIDE_BLANKS("two or more blanks", ' '),
    /** Any run of blanks. */
    BLANKS("blanks", ' ');

    private final String label;
    private final char character;

    Delimiter(String label, char character) {
        this.label = label;
        this.character = character;
    }

    /** The delimiter in the words of a message. */
    public String label() {
        return label;
    }

    /** The character itself; a blank for the last two. */
    public char character() {
        return character;
    }

    /** Whether cells are set apart by runs of blanks, so that empty cells show only by their position. */
    public boolean isBlank() {
        return character == ' ';
    }
}
