package tallywell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Reads layout files ({@code tallywell: layout/1}). */
public final class LayoutReader {
    private static final Pattern SLOT = Pattern.compile("\\d+");
    private static final Pattern WORD = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*");
    private static final Content UNUSED = new Content.Unused();
    private static final int MOST_SLOTS = 1536;

    /**
     * Reads a layout.
     *
     * @throws InputException with every fault of the wells that was found, or the first of any other kind
     */
    public Layout read(Path path) throws InputException {
        YamlMapping top = YamlDocument.read(path, "layout/1", "name", "plate", "wells", "legend");
        Optional<YamlNode> named = top.find("name");
        String name = named.isPresent() ? named.get().freeText() : stem(path);
        YamlNode plate = top.need("plate", "'plate: 96'");
        PlateFormat format = format(plate);
        Map<String, Content> legend = new HashMap<>();
        Map<String, YamlNode> legendPlaces = new LinkedHashMap<>();
        if (top.has("legend")) {
            for (Map.Entry<String, YamlNode> entry : top.need("legend", "")
                    .mapping("the words used in the wells")
                    .all()
                    .entrySet()) {
                legend.put(entry.getKey(), content(entry.getKey(), entry.getValue()));
                legendPlaces.put(entry.getKey(), entry.getValue());
            }
        }
        YamlMapping rows = top.need("wells", "'wells:' with one line a row").mapping("one line a row");
        WellMap<Content> wells = wells(rows, format, legend);
        Layout layout = new Layout(name, wells);
        checkSlotsReferredTo(layout, legendPlaces);
        return layout;
    }

    private static PlateFormat format(YamlNode plate) throws InputException {
        String text = plate.text().strip();
        Optional<PlateFormat> format = SLOT.matcher(text).matches() && text.length() < 6
                ? PlateFormat.ofWells(Integer.parseInt(text))
                : Optional.empty();
        return format.orElseThrow(
                () -> plate.wrong("found 'plate: " + text + "'; expected one of " + PlateFormat.knownSizes()));
    }

    private static WellMap<Content> wells(YamlMapping rows, PlateFormat format, Map<String, Content> legend)
            throws InputException {
        Map<Well, Content> contents = new HashMap<>();
        List<Notice> faults = new ArrayList<>();
        Set<Integer> seen = new HashSet<>();
        for (Map.Entry<String, YamlNode> entry : rows.all().entrySet()) {
            int row = Well.rowOf(entry.getKey());
            YamlNode line = entry.getValue();
            if (row < 0 || row >= format.rows()) {
                throw rows.key(entry.getKey())
                        .wrong("found the row '" + entry.getKey() + "'; expected rows A to "
                                + Well.rowName(format.rows() - 1) + " on a plate of " + format.wells());
            }
            if (!seen.add(row)) {
                throw rows.key(entry.getKey())
                        .wrong("found the row " + Well.rowName(row) + " a second time; expected each row once");
            }
            String[] words = line.text().strip().split("\\s+");
            if (words.length != format.columns()) {
                throw line.wrong("found " + words.length + " words in row " + Well.rowName(row) + "; expected "
                        + format.columns() + ", one a column, '.' for an unused well");
            }
            for (int column = 0; column < words.length; column++) {
                Well well = new Well(row, column);
                try {
                    contents.put(well, content(words[column], legend));
                } catch (IllegalArgumentException e) {
                    faults.add(
                            Notice.error(Place.line(line.path(), line.line()), "well " + well + ": " + e.getMessage()));
                }
            }
        }
        for (int row = 0; row < format.rows(); row++) {
            if (!seen.contains(row)) {
                throw rows.owner()
                        .wrong("found no row " + Well.rowName(row) + "; expected rows A to "
                                + Well.rowName(format.rows() - 1) + ", '.' for unused wells");
            }
        }
        if (!faults.isEmpty()) {
            throw new InputException(faults);
        }
        return WellMap.of(format, well -> contents.getOrDefault(well, UNUSED));
    }

    private static Content content(String word, Map<String, Content> legend) {
        if (word.equals(".")) {
            return UNUSED;
        }
        if (SLOT.matcher(word).matches()) {
            if (word.length() > 6 || Integer.parseInt(word) < 1 || Integer.parseInt(word) > MOST_SLOTS) {
                throw new IllegalArgumentException("found the slot '" + word + "'; expected 1 to " + MOST_SLOTS);
            }
            return new Content.Sample(Integer.parseInt(word));
        }
        Content content = legend.get(word);
        if (content == null) {
            throw new IllegalArgumentException("found '" + word
                    + "', which is not in the legend; expected a slot number, '.', or a word of the legend");
        }
        return content;
    }

    private static Content content(String word, YamlNode node) throws InputException {
        if (!WORD.matcher(word).matches()) {
            throw node.wrong(
                    "found the word '" + word + "' in the legend; expected a letter, then letters, digits, '-' or '_'");
        }
        YamlMapping keys = node.mapping("a role, such as {role: blank}");
        String role = keys.need("role", "'role: blank'").text();
        return switch (role) {
            case "blank" -> blank(word, keys);
            case "standard" -> standard(word, keys);
            case "control" -> control(word, keys);
            case "sample-blank" -> sampleBlank(word, keys);
            case "spike" -> spike(word, keys);
            default ->
                throw node.wrong(
                        "found the role '" + role + "'; expected one of blank, standard, control, sample-blank, spike");
        };
    }

    private static Content blank(String word, YamlMapping keys) throws InputException {
        keys.only("role", "group", "trigger");
        boolean triggered = true;
        if (keys.has("trigger")) {
            YamlNode trigger = keys.need("trigger", "");
            if (!trigger.text().equals("none")) {
                throw trigger.wrong(
                        "found 'trigger: " + trigger.text() + "'; expected 'trigger: none', or no such key");
            }
            triggered = false;
        }
        return new Content.Blank(word, group(keys), triggered);
    }

    private static Content standard(String word, YamlMapping keys) throws InputException {
        keys.only("role", "group", "level", "levels");
        PerAnalyte level = perAnalyte(keys, "level", "levels");
        if (level.isEmpty()) {
            throw keys.owner().wrong("found a standard without a level; expected 'level: 0.5 g/L'");
        }
        return new Content.Standard(word, group(keys), level);
    }

    private static Content control(String word, YamlMapping keys) throws InputException {
        keys.only("role", "group", "name", "assigned", "tolerance", "dilution");
        Optional<YamlNode> named = keys.find("name");
        String name = named.isPresent() ? named.get().freeText() : word;
        Optional<Quantity> tolerance = Optional.empty();
        if (keys.has("tolerance")) {
            YamlNode node = keys.need("tolerance", "");
            tolerance =
                    Optional.of(node.quantity(Kind.RATIO, Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT));
            if (!(tolerance.get().value() > 0)) {
                throw node.wrong("found '" + node.text() + "'; expected a tolerance above 0");
            }
        }
        return new Content.Control(
                word, group(keys), name, perAnalyte(keys, "assigned", "assigned"), tolerance, dilution(keys));
    }

    private static Dilution dilution(YamlMapping keys) throws InputException {
        if (!keys.has("dilution")) {
            return Dilution.NONE;
        }
        YamlNode node = keys.need("dilution", "");
        try {
            return Dilution.parse(node.text());
        } catch (IllegalArgumentException e) {
            throw node.wrong(e);
        }
    }

    private static Content sampleBlank(String word, YamlMapping keys) throws InputException {
        keys.only("role", "group", "of");
        return new Content.SampleBlank(word, group(keys), of(keys));
    }

    private static Content spike(String word, YamlMapping keys) throws InputException {
        keys.only("role", "group", "of", "added", "fraction");
        PerAnalyte added = perAnalyte(keys, "added", "added");
        if (added.isEmpty()) {
            throw keys.owner().wrong("found a spike without what was added; expected 'added: 0.2 g/L'");
        }
        double fraction = 0;
        if (keys.has("fraction")) {
            YamlNode node = keys.need("fraction", "");
            fraction = node.text().strip().endsWith("%")
                    ? node.quantity(Kind.RATIO).base()
                    : node.number();
            if (!(fraction >= 0 && fraction < 1)) {
                throw node.wrong(
                        "found '" + node.text() + "'; expected a part of the volume from 0 to below 1, such as 10 %");
            }
        }
        return new Content.Spike(word, group(keys), of(keys), added, fraction);
    }

    private static int of(YamlMapping keys) throws InputException {
        return keys.need("of", "'of: 4', the slot of its sample").count(MOST_SLOTS);
    }

    private static String group(YamlMapping keys) throws InputException {
        Optional<YamlNode> group = keys.find("group");
        return group.isPresent() ? group.get().text().strip() : "";
    }

    private static PerAnalyte perAnalyte(YamlMapping keys, String single, String several) throws InputException {
        if (!single.equals(several) && keys.has(single) && keys.has(several)) {
            throw keys.owner().wrong("found both '" + single + "' and '" + several + "'; expected one of them");
        }
        Optional<YamlNode> node = keys.find(single).or(() -> keys.find(several));
        if (node.isEmpty()) {
            return PerAnalyte.none();
        }
        if (node.get().isScalar()) {
            if (!single.equals(several) && keys.has(several)) {
                throw node.get()
                        .wrong("found one quantity under '" + several + "'; expected one by analyte, or the key '"
                                + single + "'");
            }
            return PerAnalyte.single(concentration(node.get()));
        }
        Map<String, Quantity> byName = new LinkedHashMap<>();
        for (Map.Entry<String, YamlNode> entry :
                node.get().mapping("a quantity for each analyte").all().entrySet()) {
            byName.put(entry.getKey(), concentration(entry.getValue()));
        }
        return new PerAnalyte(byName);
    }

    private static Quantity concentration(YamlNode node) throws InputException {
        Quantity quantity = node.quantity(Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
        if (!(quantity.value() >= 0)) {
            throw node.wrong("found '" + node.text() + "'; expected a concentration of 0 or more");
        }
        return quantity;
    }

    private static void checkSlotsReferredTo(Layout layout, Map<String, YamlNode> places) throws InputException {
        Set<Integer> slots = new HashSet<>(layout.slots());
        List<Notice> faults = new ArrayList<>();
        Set<String> told = new HashSet<>();
        layout.wells().forEach((well, content) -> {
            int of = content instanceof Content.SampleBlank blank
                    ? blank.of()
                    : content instanceof Content.Spike spike ? spike.of() : 0;
            YamlNode place = places.get(content.word());
            if (of > 0 && !slots.contains(of) && place != null && told.add(content.word())) {
                faults.add(Notice.error(
                        Place.line(place.path(), place.line()),
                        "found '" + content.word() + "' of sample " + of + ", but no well holds slot " + of
                                + "; expected a slot of this layout"));
            }
        });
        if (!faults.isEmpty()) {
            throw new InputException(faults);
        }
    }

    private static String stem(Path path) {
        return String.valueOf(path.getFileName()).replaceFirst("[.][^.]*$", "");
    }
}
