package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Treatment;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Samples as rows of text, as a table shows them and a spreadsheet gives them. */
public final class SampleRows {
    /** The columns: slot, then what can be typed. */
    public static final List<String> COLUMNS = List.of(
            "slot",
            "sample",
            "dilution",
            "volume",
            "mass_g",
            "extract_mL",
            "density_g_per_mL",
            "group",
            "id",
            "note",
            "treatment",
            "expected");

    /** Where in a row its dilution stands. */
    public static final int DILUTION = COLUMNS.indexOf("dilution");

    private static final int MOST_NAMED = 8;

    /** Where the name stands. */
    public static final int NAME = COLUMNS.indexOf("sample");

    private SampleRows() {}

    /** One row a slot of the layout; slots without a sample have empty cells. */
    public static List<List<String>> of(List<Integer> slots, SampleList list, Shown shown) {
        List<List<String>> rows = new ArrayList<>();
        for (int slot : slots) {
            Optional<Sample> sample = list.in(slot);
            rows.add(sample.map(each -> row(each, shown)).orElseGet(() -> empty(slot)));
        }
        return rows;
    }

    private static List<String> empty(int slot) {
        List<String> row = new ArrayList<>(java.util.Collections.nCopies(COLUMNS.size(), ""));
        row.set(0, Integer.toString(slot));
        return row;
    }

    private static List<String> row(Sample sample, Shown shown) {
        return new ArrayList<>(List.of(
                Integer.toString(sample.slot()),
                sample.name(),
                shown.plain(sample.dilution().factor()),
                sample.volumeUl().isPresent() ? shown.plain(sample.volumeUl().getAsDouble()) + " µL" : "",
                sample.solid().map(solid -> shown.plain(solid.massG())).orElse(""),
                sample.solid().map(solid -> shown.plain(solid.extractMl())).orElse(""),
                sample.densityGPerMl().isPresent()
                        ? shown.plain(sample.densityGPerMl().getAsDouble())
                        : "",
                sample.group(),
                sample.id(),
                sample.note(),
                sample.treatment().word(),
                ""));
    }

    /**
     * A dilution for all samples, as it goes into the cells.
     *
     * @throws InputException if it is none
     */
    public static String dilution(String typed, Shown shown) throws InputException {
        try {
            Dilution.parse(shown.pointed(typed.strip()));
            return typed.strip();
        } catch (IllegalArgumentException e) {
            throw new InputException(Place.nowhere(), String.valueOf(e.getMessage()), e);
        }
    }

    /**
     * The list that the rows make. A row without anything but its slot is no sample: its wells are not used.
     *
     * @throws InputException naming slot and column, what was found and what would be right
     */
    public static SampleList list(List<List<String>> rows, Shown shown) throws InputException {
        List<List<String>> used = rows.stream()
                .filter(row -> !row.subList(1, row.size()).stream().allMatch(String::isBlank))
                .toList();
        allOrNoDilutions(used);
        List<Sample> samples = new ArrayList<>();
        for (List<String> row : used) {
            samples.add(sample(row, shown));
        }
        boolean none = used.stream().allMatch(row -> row.get(DILUTION).isBlank());
        return SampleList.of(samples, none ? samples.stream().map(Sample::slot).collect(Collectors.toSet()) : Set.of());
    }

    /** A dilution that was forgotten among others would make a value too low by its whole factor, and nothing would show it. */
    private static void allOrNoDilutions(List<List<String>> used) throws InputException {
        List<List<String>> without =
                used.stream().filter(row -> row.get(DILUTION).isBlank()).toList();
        if (!without.isEmpty() && without.size() < used.size()) {
            String numbers = without.stream()
                    .limit(MOST_NAMED)
                    .map(row -> row.get(0))
                    .collect(Collectors.joining(", ", "", without.size() > MOST_NAMED ? ", …" : ""));
            throw wrong(
                    without.get(0),
                    DILUTION,
                    "found no dilution for " + (without.size() == 1 ? "sample " : "samples ") + numbers
                            + ", while others have one; expected one for each, 1 where a sample is undiluted");
        }
    }

    private static Sample sample(List<String> row, Shown shown) throws InputException {
        int slot = Integer.parseInt(row.get(0));
        String name = row.get(1).strip();
        OptionalDouble mass = positive(row, 4, shown);
        OptionalDouble extract = positive(row, 5, shown);
        if (mass.isPresent() != extract.isPresent()) {
            throw wrong(row, mass.isPresent() ? 5 : 4, "found a solid without it; expected both mass_g and extract_mL");
        }
        return new Sample(
                slot,
                name.isEmpty() ? Integer.toString(slot) : name,
                dilution(row, shown),
                volume(row, shown),
                mass.isPresent()
                        ? Optional.of(new Sample.Extraction(mass.getAsDouble(), extract.getAsDouble()))
                        : Optional.empty(),
                positive(row, 6, shown),
                row.get(7).strip(),
                row.get(8).strip(),
                row.get(9).strip(),
                treatment(row));
    }

    private static Treatment treatment(List<String> row) throws InputException {
        String text = row.get(10).strip();
        return Worded.of(Treatment.class, text.toLowerCase(Locale.ROOT))
                .orElseThrow(() -> wrong(row, 10, "found '" + text + "'; expected free, total, or nothing"));
    }

    private static Dilution dilution(List<String> row, Shown shown) throws InputException {
        String text = row.get(2).strip();
        try {
            return text.isEmpty() ? Dilution.NONE : Dilution.parse(shown.pointed(text));
        } catch (IllegalArgumentException e) {
            throw wrong(row, 2, String.valueOf(e.getMessage()));
        }
    }

    private static OptionalDouble volume(List<String> row, Shown shown) throws InputException {
        String text = row.get(3).strip();
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            String pointed = shown.pointed(text);
            double volume = Quantity.parse(pointed.matches("[\\d.]+") ? pointed + " µL" : pointed, Kind.VOLUME)
                    .base();
            if (volume > 0) {
                return OptionalDouble.of(volume);
            }
        } catch (IllegalArgumentException e) {
            throw wrong(row, 3, String.valueOf(e.getMessage()));
        }
        throw wrong(row, 3, "found '" + text + "'; expected a volume above 0, such as 20 µL");
    }

    private static OptionalDouble positive(List<String> row, int column, Shown shown) throws InputException {
        String text = row.get(column).strip();
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            double value = Double.parseDouble(shown.pointed(text));
            if (value > 0 && value <= Double.MAX_VALUE) {
                return OptionalDouble.of(value);
            }
        } catch (NumberFormatException e) {
            throw wrong(row, column, "found '" + text + "'; expected a number above 0");
        }
        throw wrong(row, column, "found '" + text + "'; expected a number above 0");
    }

    private static InputException wrong(List<String> row, int column, String text) {
        return new InputException(new Place.InFile("sample " + row.get(0), COLUMNS.get(column)), text);
    }
}
