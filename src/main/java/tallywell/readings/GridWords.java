package tallywell.readings;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** What the words in the corner of a grid and left of it say. */
final class GridWords {
    private static final Set<Meaning> OF_PLATES = EnumSet.of(
            Meaning.ROW, Meaning.COLUMN, Meaning.WELL, Meaning.PLATE, Meaning.VALUE, Meaning.ABSORBANCE, Meaning.RAW);

    private static final Set<Meaning> OTHER_AXES = EnumSet.of(
            Meaning.SAMPLE, Meaning.SOURCE, Meaning.OTHER, Meaning.OTHER_TIME, Meaning.CYCLE, Meaning.TEMPERATURE);

    private final Sheet sheet;
    private final int headings;
    private final HeadedGrid.Frame frame;

    GridWords(Sheet sheet, int headings, HeadedGrid.Frame frame) {
        this.sheet = sheet;
        this.headings = headings;
        this.frame = frame;
    }

    Facts corner() {
        StringBuilder text = new StringBuilder();
        for (int column = 0; column < frame.heads().first(); column++) {
            boolean over = column == frame.side() || sheet.look(frame.next(), column) == Look.EMPTY;
            if (over && sheet.look(headings, column) == Look.TEXT) {
                text.append(' ').append(sheet.text(headings, column));
            }
        }
        String words = text.toString().strip();
        return namesOtherAxes(words)
                ? Facts.none()
                        .withDoubt("found '" + words + "' in the corner of a grid ("
                                + sheet.table().place(headings).text()
                                + "), which may name something else than rows and columns of a plate; expected Row,"
                                + " Column or nothing")
                : Facts.ofHeading(words);
    }

    private boolean namesOtherAxes(String words) {
        Set<Meaning> meanings = LineMeanings.of(words);
        boolean plate = meanings.stream().anyMatch(OF_PLATES::contains);
        boolean two = words.matches("(?s).*\\p{L}.*[/\\\\|×].*\\p{L}.*");
        boolean times = two && meanings.contains(Meaning.TIME)
                || TimeUnit.of(words).filter(unit -> words.length() > 1).isPresent();
        return times || !plate && (two || meanings.stream().anyMatch(OTHER_AXES::contains));
    }

    /** A column left of the grid that holds the time of each grid, once. */
    private Optional<TimeHeading> gutterHeading(int column) {
        String text = sheet.text(headings, column);
        boolean filled = column != frame.side() && sheet.look(frame.next(), column) != Look.EMPTY;
        return filled && Words.in(text).contains(Meaning.TIME) ? Optional.of(TimeHeading.of(text)) : Optional.empty();
    }

    Facts gutter(GridLines group) {
        Facts facts = Facts.none();
        int row = group.lines.get(0);
        for (int column = 0; column < frame.heads().first(); column++) {
            if (column == frame.side() || sheet.look(row, column) == Look.EMPTY || isRemark(group, column)) {
                continue;
            }
            Optional<TimeHeading> heading = gutterHeading(column);
            String text = sheet.text(row, column);
            if (heading.isPresent()) {
                facts = facts.withTime(heading.get().read(text));
            } else if (sheet.look(row, column) == Look.TEXT) {
                facts = facts.or(Facts.ofHeading(text));
            }
        }
        return facts;
    }

    /** Whether a column left of the grid says something of single rows, rather than once of the whole grid. */
    private boolean isRemark(GridLines group, int column) {
        Set<Meaning> heading = Words.in(sheet.text(headings, column));
        if (heading.contains(Meaning.TIME)) {
            return false;
        }
        return heading.contains(Meaning.SAMPLE)
                || heading.contains(Meaning.MARK)
                || group.lines.size() > 1 && sheet.look(group.lines.get(1), column) != Look.EMPTY;
    }
}
