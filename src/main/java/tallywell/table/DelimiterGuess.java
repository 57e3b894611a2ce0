package tallywell.table;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Finds out what stands between the cells: the delimiter that cuts the text into the most numbers and wells, and leaves
 * the fewest cells that look as if they should have been cut on.
 */
final class DelimiterGuess {
    private static final int SAMPLE = 1 << 14;
    private static final Pattern NAMED = Pattern.compile("(?i)\"?sep=([\t;|,])\"?");
    private static final Pattern GROUPED =
            Pattern.compile("[-+]?\\d{1,3}([., '\u00a0\u202f])\\d{3}(\\1\\d{3})*([.,]\\d+)?");
    private static final Pattern WELL = Pattern.compile("[A-Za-z]{1,2} ?\\d{1,3}");

    private DelimiterGuess() {}

    /** The delimiter that cuts the first line into two or more headings that are known; empty if none does. */
    static Optional<Delimiter> byHeadings(Decoded text, List<String> headings) {
        Optional<String> first =
                text.head(SAMPLE).stream().filter(line -> !line.isBlank()).findFirst();
        if (first.isEmpty() || headings.isEmpty()) {
            return Optional.empty();
        }
        for (Delimiter delimiter : List.of(Delimiter.COMMA, Delimiter.SEMICOLON, Delimiter.TAB)) {
            long known = SampleLine.cut(first.get(), delimiter).stream()
                    .filter(cell -> headings.stream().anyMatch(cell.strip()::equalsIgnoreCase))
                    .count();
            if (known > 1) {
                return Optional.of(delimiter);
            }
        }
        return Optional.empty();
    }

    static Delimiter of(Decoded text) {
        List<String> lines = text.head(SAMPLE);
        if (!lines.isEmpty()) {
            var named = NAMED.matcher(lines.get(0).strip());
            if (named.matches()) {
                return byCharacter(named.group(1).charAt(0));
            }
        }
        Delimiter best = Delimiter.COMMA;
        double most = 0;
        for (Delimiter delimiter : Delimiter.values()) {
            double score = score(lines, delimiter);
            if (score > most + 1e-9) {
                best = delimiter;
                most = score;
            }
        }
        // Cutting at every blank makes numbers of the counters in names; it is right only if it cuts more evenly.
        boolean named = best == Delimiter.BLANKS
                && score(lines, Delimiter.WIDE_BLANKS) > 0
                && evenness(lines, Delimiter.WIDE_BLANKS) >= evenness(lines, Delimiter.BLANKS);
        return named ? Delimiter.WIDE_BLANKS : best;
    }

    /** The share of the lines with two cells or more, one of them a number, that have the commonest number of cells. */
    private static double evenness(List<String> lines, Delimiter delimiter) {
        Map<Integer, Integer> counts = new HashMap<>();
        int all = 0;
        for (String line : lines) {
            List<String> cells = SampleLine.cut(line, delimiter);
            if (cells.stream().anyMatch(cell -> Look.of(cell) == Look.CLEAN)) {
                counts.merge(cells.size(), 1, Integer::sum);
                all++;
            }
        }
        return all == 0 ? 0 : (double) Collections.max(counts.values()) / all;
    }

    private static Delimiter byCharacter(char character) {
        for (Delimiter delimiter : Delimiter.values()) {
            if (delimiter.character() == character) {
                return delimiter;
            }
        }
        throw new AssertionError(character);
    }

    private static double score(List<String> lines, Delimiter delimiter) {
        double score = 0;
        for (String line : lines) {
            List<String> cells = SampleLine.cut(line, delimiter);
            for (String cell : cells) {
                Look look = Look.of(cell);
                // A line in one piece says nothing for a delimiter, but may say something against it.
                score += cells.size() > 1 || look == Look.DIRTY ? look.weight : 0;
            }
        }
        return score;
    }

    /** How a cell looks to somebody who checks whether it was cut rightly. */
    private enum Look {
        /** A number, a time or a well. */
        CLEAN(1),
        /** Words. They decide only where there are no numbers, as in lists of names. */
        PLAIN(0.05),
        /** Should have been cut on. */
        DIRTY(-2),
        /** Decides only where there is nothing but delimiters. */
        EMPTY(0.001);

        private final double weight;

        Look(double weight) {
            this.weight = weight;
        }

        static Look of(String cell) {
            if (cell.isEmpty()) {
                return EMPTY;
            }
            int digits = 0;
            int letters = 0;
            int points = 0;
            int commas = 0;
            boolean blank = false;
            for (int i = 0; i < cell.length(); i++) {
                char c = cell.charAt(i);
                if (c == '\t' || c == ';' || c == '|') {
                    return DIRTY;
                }
                digits += c >= '0' && c <= '9' ? 1 : 0;
                letters += Character.isLetter(c) ? 1 : 0;
                points += c == '.' ? 1 : 0;
                commas += c == ',' ? 1 : 0;
                blank |= c == ' ';
            }
            if (digits == 0) {
                return commas > 0 ? DIRTY : PLAIN;
            }
            if (letters <= 1 && points + commas <= 1 && !blank && !cell.startsWith(",") && !cell.endsWith(",")
                    || cell.length() < 24
                            && (WELL.matcher(cell).matches()
                                    || GROUPED.matcher(cell).matches())) {
                return CLEAN;
            }
            return commas > 0 || blank && twoNumbers(cell) ? DIRTY : PLAIN;
        }

        /** Whether a digit, then blanks, then another number stand in one cell. */
        private static boolean twoNumbers(String cell) {
            for (int i = 1; i + 1 < cell.length(); i++) {
                char before = cell.charAt(i - 1);
                char after = cell.charAt(i + 1);
                if (cell.charAt(i) == ' '
                        && before >= '0'
                        && before <= '9'
                        && (after >= '0' && after <= '9' || after == '-' || after == ' ')) {
                    return true;
                }
            }
            return false;
        }
    }
}
