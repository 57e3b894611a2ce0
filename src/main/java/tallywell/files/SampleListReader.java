package tallywell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.quantity.CellText;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;
import tallywell.table.Delimiter;
import tallywell.table.Table;
import tallywell.table.Tables;

/** Reads sample lists: CSV or a workbook, with the columns {@code slot}, {@code sample}, {@code dilution} and more. */
public final class SampleListReader {
    private static final List<String> COLUMNS = List.of(
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
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern HALF = Pattern.compile("[+-]?0\\d.*");
    private static final Pattern COMMA_NUMBER = Pattern.compile("([+-]?\\d+),(\\d+)(.*)");
    private static final Pattern SLOT = Pattern.compile("(\\d{1,6})(?:[.]0+)?");
    private static final int MOST_SLOTS = 1536;

    /** A digit group that may be decimals or thousands. The program itself writes no zeros at the end. */
    private static final Pattern THOUSANDS = Pattern.compile("([1-9]\\d{0,2})[.,](\\d\\d0)");

    /** Grams in a millilitre; sugar has 1.6, table salt 2.2 and calcium carbonate 2.7 (handbook values, from memory). */
    private static final double DENSEST = 3;

    /**
     * Reads a sample list.
     *
     * @throws InputException with the first fault: where, what was found, what would be right
     */
    public SampleList read(Path path) throws InputException {
        return new Reading(Tables.list(path, COLUMNS)).list();
    }

    /**
     * Reads a sample list before the run is planned: slots and dilutions may be missing.
     *
     * @throws InputException with the first fault
     */
    public List<WantedSample> readWanted(Path path) throws InputException {
        return new Reading(Tables.list(path, COLUMNS)).wanted();
    }

    /** One table being read. */
    private static final class Reading {
        private final Table table;
        private final boolean commaIsDecimal;
        private final Map<String, Integer> columns = new LinkedHashMap<>();
        private int header;

        Reading(Table table) {
            this.table = table;
            commaIsDecimal = table.form()
                    .map(form -> form.delimiter() != Delimiter.COMMA)
                    .orElse(true);
        }

        SampleList list() throws InputException {
            findHeader();
            if (!columns.containsKey("slot")) {
                throw noSlots();
            }
            Map<Integer, Sample> samples = new HashMap<>();
            Set<Integer> unstated = new HashSet<>();
            for (int row = header + 1; row < table.rows(); row++) {
                if (!table.isBlank(row)) {
                    refuseOdd(row);
                    Sample sample = sample(row, slot(row));
                    if (samples.putIfAbsent(sample.slot(), sample) != null) {
                        throw new InputException(
                                table.place(row),
                                "found slot " + sample.slot() + " a second time; expected each slot once");
                    }
                    if (text(row, "dilution").isEmpty()) {
                        unstated.add(sample.slot());
                    }
                }
            }
            return SampleList.of(samples.values(), unstated);
        }

        private void findHeader() throws InputException {
            while (header < table.rows() && table.isBlank(header)) {
                header++;
            }
            for (int column = 0; column < table.width(header); column++) {
                String name = table.text(header, column).strip();
                if (name.isEmpty()) {
                    continue;
                }
                String known = COLUMNS.stream()
                        .filter(each -> each.equalsIgnoreCase(name))
                        .findFirst()
                        .orElse("");
                if (known.isEmpty()) {
                    throw new InputException(
                            table.place(header, column),
                            "found the column '" + name + "'; expected the headings " + String.join(", ", COLUMNS)
                                    + " (slot is needed)");
                }
                if (columns.putIfAbsent(known, column) != null) {
                    throw new InputException(
                            table.place(header, column),
                            "found the column '" + name + "' a second time; expected it once");
                }
            }
        }

        /** A cell under no heading mostly means that a decimal comma or a comma in a name has shifted the row. */
        private void refuseOdd(int row) throws InputException {
            for (int column = 0; column < table.width(row); column++) {
                String text = table.text(row, column).strip();
                Optional<String> hidden = HiddenCharacters.first(text);
                if (hidden.isPresent()) {
                    throw new InputException(
                            table.place(row, column),
                            "found the invisible character " + hidden.get() + "; type the text anew without it");
                }
                if (!text.isEmpty() && !columns.containsValue(column)) {
                    throw new InputException(
                            table.place(row, column),
                            "found '" + text + "' under no heading; expected as many cells as there are headings"
                                    + (commaIsDecimal
                                            ? ""
                                            : " (in a file separated by commas, a decimal comma makes two cells of one"
                                                    + " number, and a comma in a name two of one text: write a point,"
                                                    + " and put names in quotes)"));
                }
            }
        }

        private InputException noSlots() {
            return new InputException(
                    table.place(header), "found no column 'slot'; expected a first line such as slot,sample,dilution");
        }

        List<WantedSample> wanted() throws InputException {
            findHeader();
            if (!columns.containsKey("slot") && !columns.containsKey("sample")) {
                throw new InputException(
                        table.place(header),
                        "found neither a column 'sample' nor a column 'slot'; expected a first line such as sample,expected");
            }
            List<WantedSample> wanted = new ArrayList<>();
            Set<Integer> slots = new HashSet<>();
            for (int row = header + 1; row < table.rows(); row++) {
                if (!table.isBlank(row)) {
                    refuseOdd(row);
                    boolean placed = !text(row, "slot").isEmpty();
                    Sample sample = sample(row, placed ? slot(row) : 0);
                    if (placed && !slots.add(sample.slot())) {
                        throw new InputException(
                                table.place(row),
                                "found slot " + sample.slot() + " a second time; expected each slot once");
                    }
                    wanted.add(new WantedSample(
                            sample,
                            !text(row, "dilution").isEmpty(),
                            pointed(row, "expected", text(row, "expected")),
                            table.place(row).text()));
                }
            }
            return wanted;
        }

        private Sample sample(int row, int slot) throws InputException {
            String name = text(row, "sample");
            String dilution = text(row, "dilution");
            return new Sample(
                    slot,
                    name.isEmpty() ? Integer.toString(slot) : name,
                    dilution.isEmpty() ? Dilution.NONE : dilution(row, dilution),
                    volume(row),
                    solid(row),
                    positive(row, "density_g_per_mL", Unit.GRAM_PER_MILLILITRE),
                    text(row, "group"),
                    text(row, "id"),
                    text(row, "note"),
                    treatment(row));
        }

        private Treatment treatment(int row) throws InputException {
            String text = text(row, "treatment");
            return Worded.of(Treatment.class, text.toLowerCase(Locale.ROOT))
                    .orElseThrow(() -> wrong(
                            row, "treatment", "found the treatment '" + text + "'; expected free, total, or nothing"));
        }

        private int slot(int row) throws InputException {
            String text = text(row, "slot");
            Matcher slot = SLOT.matcher(text);
            if (slot.matches()) {
                int number = Integer.parseInt(slot.group(1));
                if (number >= 1 && number <= MOST_SLOTS) {
                    return number;
                }
            }
            throw wrong(
                    row,
                    "slot",
                    (text.isEmpty() ? "found no slot" : "found the slot '" + text + "'")
                            + "; expected the number of a slot of the layout, from 1");
        }

        private Dilution dilution(int row, String text) throws InputException {
            if (table.form().isPresent()) {
                refuseThousands(row, text);
            }
            try {
                return Dilution.parse(pointed(row, "dilution", text));
            } catch (IllegalArgumentException e) {
                throw wrong(row, "dilution", String.valueOf(e.getMessage()));
            }
        }

        /** {@code 1.000} is one to some and a thousand to others; a number that a workbook holds is no text and no question. */
        private void refuseThousands(int row, String text) throws InputException {
            Matcher thousands = THOUSANDS.matcher(text);
            if (thousands.matches()) {
                String whole = thousands.group(1);
                throw wrong(
                        row,
                        "dilution",
                        "found the dilution '" + text + "', which may be "
                                + Numbers.plain(Double.parseDouble(whole + "." + thousands.group(2))) + " or " + whole
                                + thousands.group(2)
                                + "; expected it without a mark of thousands and without zeros at the end");
            }
        }

        /** A bare number is in µL: the heading has no room for a unit. */
        private OptionalDouble volume(int row) throws InputException {
            String text = text(row, "volume");
            if (text.isEmpty()) {
                return OptionalDouble.empty();
            }
            String pointed = pointed(row, "volume", text);
            refuseHalf(row, "volume", text);
            try {
                double microlitres = Quantity.parse(
                                NUMBER.matcher(pointed).matches() ? pointed + " µL" : pointed, Kind.VOLUME)
                        .base();
                if (microlitres > 0) {
                    return OptionalDouble.of(microlitres);
                }
            } catch (IllegalArgumentException e) {
                throw wrong(row, "volume", String.valueOf(e.getMessage()));
            }
            throw wrong(row, "volume", "found the volume '" + text + "'; expected a volume above 0, such as 20 µL");
        }

        private Optional<Sample.Extraction> solid(int row) throws InputException {
            OptionalDouble mass = positive(row, "mass_g", Unit.GRAM);
            OptionalDouble extract = positive(row, "extract_mL", Unit.MILLILITRE);
            if (mass.isPresent() != extract.isPresent()) {
                String missing = mass.isPresent() ? "extract_mL" : "mass_g";
                throw new InputException(
                        table.place(row),
                        "found a solid without '" + missing
                                + "'; expected both mass_g and extract_mL (the volume the extract was made up to)");
            }
            if (mass.isPresent() && !(mass.getAsDouble() <= DENSEST * extract.getAsDouble())) {
                throw new InputException(
                        table.place(row),
                        "found " + Numbers.plain(mass.getAsDouble()) + " g in an extract of "
                                + Numbers.plain(extract.getAsDouble())
                                + " mL, which cannot hold so much; expected the mass in g and the volume in mL");
            }
            return mass.isPresent()
                    ? Optional.of(new Sample.Extraction(mass.getAsDouble(), extract.getAsDouble()))
                    : Optional.empty();
        }

        private OptionalDouble positive(int row, String column, Unit unit) throws InputException {
            String text = text(row, column);
            if (text.isEmpty()) {
                return OptionalDouble.empty();
            }
            String pointed = pointed(row, column, text);
            refuseHalf(row, column, text);
            if (NUMBER.matcher(pointed).matches()) {
                double value = Double.parseDouble(pointed);
                if (value > 0 && unit.kind().isPossible(value * unit.factor())) {
                    return OptionalDouble.of(value);
                }
                if (value > 0) {
                    throw wrong(
                            row,
                            column,
                            "found '" + text + "' under '" + column + "'; expected a number from "
                                    + Numbers.brief(unit.kind().least() / unit.factor(), 3) + " to "
                                    + Numbers.brief(unit.kind().most() / unit.factor(), 3));
                }
            }
            throw wrong(row, column, "found '" + text + "' under '" + column + "'; expected a number above 0");
        }

        /** {@code 012} is what a decimal comma leaves of 5,012 in a file separated by commas. */
        private void refuseHalf(int row, String column, String text) throws InputException {
            if (HALF.matcher(text).matches()) {
                throw wrong(
                        row,
                        column,
                        "found '" + text + "', which begins with 0, under '" + column
                                + "', as the half of a number behind a decimal comma does; write a decimal point, and no"
                                + " 0 in front");
            }
        }

        /** The number with a decimal point, where the file may write a comma. */
        private String pointed(int row, String column, String text) throws InputException {
            Matcher comma = COMMA_NUMBER.matcher(text);
            if (!comma.matches()) {
                return text;
            }
            if (!commaIsDecimal) {
                throw wrong(
                        row,
                        column,
                        "found '" + text + "' with a decimal comma in a file separated by commas; write "
                                + comma.group(1) + "." + comma.group(2) + comma.group(3));
            }
            return text.replace(',', '.');
        }

        private String text(int row, String column) {
            Integer index = columns.get(column);
            return index == null ? "" : CellText.meant(table.text(row, index).strip());
        }

        private InputException wrong(int row, String column, String text) {
            Integer index = columns.get(column);
            return new InputException(index == null ? table.place(row) : table.place(row, index), text);
        }
    }
}
