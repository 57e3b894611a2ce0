package tallywell.readings;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/** The times of a series of readings, as they are written. */
interface Times {
    /** How many there are. */
    int size();

    /** What they leave open. */
    Set<Moment.Open> open();

    /** The times in s, in the order of the readings. */
    double[] seconds(Interpretation as);

    /** Where a time stands. */
    Place place(int index);

    /** Counts how the numbers among them are written. */
    void testify(Evidence evidence);

    /** Times that stand in words, such as those of titles and headings, each with its place. */
    static Times of(List<Moment> moments, List<Place> places) {
        return new Times() {
            @Override
            public int size() {
                return moments.size();
            }

            @Override
            public Set<Moment.Open> open() {
                Set<Moment.Open> open = EnumSet.noneOf(Moment.Open.class);
                moments.forEach(moment -> open.add(moment.open()));
                return open;
            }

            @Override
            public double[] seconds(Interpretation as) {
                return moments.stream()
                        .mapToDouble(moment -> moment.seconds(as))
                        .toArray();
            }

            @Override
            public Place place(int index) {
                return places.get(index);
            }

            @Override
            public void testify(Evidence evidence) {
                for (int i = 0; i < moments.size(); i++) {
                    Place place = places.get(i);
                    moments.get(i).number().ifPresent(number -> evidence.time(NumberForm.of(number), () -> place));
                }
            }
        };
    }

    /** A date before a time of day. */
    Pattern DATE = Pattern.compile(
            "(\\d{4}-\\d\\d-\\d\\d|\\d{1,2}[.]\\d{1,2}[.]\\d{2,4}|\\d{1,2}/\\d{1,2}/\\d{2,4}|\\d{4}/\\d\\d/\\d\\d)[ T](?=\\d)");

    /** The time of day in a cell that gives the date too; other cells as they are. */
    private static String undated(String text, String date) {
        return !date.isEmpty() && text.startsWith(date)
                ? text.substring(date.length()).strip()
                : text;
    }

    /** The date that the times of all rows share; empty if there is none. */
    private static String date(Sheet sheet, int column, int[] rows) {
        Matcher date = DATE.matcher(rows.length == 0 ? "" : sheet.text(rows[0], column));
        if (!date.lookingAt()) {
            return "";
        }
        String first = date.group();
        return Arrays.stream(rows).allMatch(row -> sheet.text(row, column).startsWith(first)) ? first : "";
    }

    /**
     * Rows in the order of the times in one of their columns.
     *
     * @throws InputException if a cell holds no time
     */
    static int[] sorted(Sheet sheet, TimeHeading heading, int column, int[] rows) throws InputException {
        double[] seconds = of(sheet, heading, column, rows)
                .seconds(new Interpretation(DecimalMark.POINT, TimeUnit.SECOND, TimeUnit.SECOND));
        return IntStream.range(0, rows.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> seconds[i]))
                .mapToInt(i -> rows[i])
                .toArray();
    }

    /**
     * Times that stand in a column of cells. Where they come with a date, all of one day, they count from its midnight.
     *
     * @throws InputException if a cell holds no time
     */
    static Times of(Sheet sheet, TimeHeading heading, int column, int[] rows) throws InputException {
        String date = date(sheet, column, rows);
        Optional<double[]> stamps = rows.length > 0
                ? Stamps.seconds(sheet, column, rows).or(() -> Stamps.secondsBeside(sheet, column, rows))
                : Optional.empty();
        if (stamps.isPresent()) {
            return of(
                    Arrays.stream(stamps.get()).mapToObj(Moment::seconds).toList(),
                    Arrays.stream(rows)
                            .mapToObj(row -> sheet.table().place(row, column))
                            .toList());
        }
        boolean numbers = true;
        Set<Moment.Open> open = EnumSet.noneOf(Moment.Open.class);
        for (int row : rows) {
            if (sheet.look(row, column).isNumber() && !heading.clock()) {
                open.add(heading.unit().isPresent() ? Moment.Open.NOTHING : Moment.Open.UNIT);
                continue;
            }
            numbers = false;
            Optional<Moment> moment = heading.read(undated(sheet.text(row, column), date));
            if (moment.isEmpty()) {
                throw sheet.fault(row, column, "the time", "a time such as 30, 30 s or 0:00:30");
            }
            open.add(moment.get().open());
        }
        boolean fast = numbers;
        TimeUnit unit = heading.unit().orElse(TimeUnit.SECOND);
        return new Times() {
            @Override
            public int size() {
                return rows.length;
            }

            @Override
            public Set<Moment.Open> open() {
                return open;
            }

            @Override
            public double[] seconds(Interpretation as) {
                double factor = heading.unit().isPresent()
                        ? unit.seconds()
                        : as.bareUnit().seconds();
                return Arrays.stream(rows)
                        .mapToDouble(row -> fast
                                ? sheet.number(row, column, as.mark()) * factor
                                : heading.read(undated(sheet.text(row, column), date))
                                        .orElseThrow()
                                        .seconds(as))
                        .toArray();
            }

            @Override
            public Place place(int index) {
                return sheet.table().place(rows[index], column);
            }

            @Override
            public void testify(Evidence evidence) {
                for (int row : rows) {
                    Look look = sheet.look(row, column);
                    if (look.isNumber() && look != Look.STORED) {
                        evidence.time(look.form(), () -> sheet.table().place(row, column));
                    }
                }
            }
        };
    }
}
