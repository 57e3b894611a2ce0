package tallywell.readings;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A plate with known readings, written down in a random form. Knows nothing of how the importer works. */
final class Rendering {
    private static final String[] EXTENSIONS = {"csv", "txt", "xlsx", "xls"};
    private static final int[][] FORMATS = {
        {8, 12}, {8, 12}, {8, 12}, {8, 12}, {8, 12}, {4, 6}, {6, 8}, {16, 24}, {3, 4}
    };

    /** What the file says, by {@code plate|nm|time|well}: the number as text, or over or missing. */
    final Map<String, String> truth = new TreeMap<>();

    final String form;
    final String carrier;
    /** Whether more than one reading of the file is possible. */
    boolean ambiguous;

    private final Random random;
    private final int rows;
    private final int columns;
    private final boolean comma;
    private final String delimiter;
    private final int digits;
    private final boolean trimmed;
    private final double markRate;
    private final List<List<Object>> lines = new ArrayList<>();

    Rendering(long seed) {
        random = new Random(seed);
        int[] format = FORMATS[random.nextInt(FORMATS.length)];
        carrier = EXTENSIONS[pick(45, 45, 6, 4)];
        // The older workbooks have no more than 256 columns, and large workbooks take long to make.
        rows = carrier.startsWith("xls") ? Math.min(8, format[0]) : format[0];
        columns = carrier.startsWith("xls") ? Math.min(12, format[1]) : format[1];
        delimiter = new String[] {"\t", ";", ",", "|", "aligned"}[pick(25, 25, 25, 10, 15)];
        comma = random.nextInt(3) == 0 && (!delimiter.equals(",") || random.nextInt(4) == 0);
        digits = 3 + random.nextInt(2);
        trimmed = random.nextInt(6) == 0;
        markRate = random.nextInt(3) == 0 ? 0.03 : 0;
        String[] forms = {
            "grid",
            "transposed",
            "bare",
            "letters",
            "numbers",
            "grids by time",
            "grids by wavelength",
            "grids by plate",
            "list",
            "list of two columns",
            "list of wavelengths",
            "series down",
            "series across",
            "long",
            "table for each well"
        };
        form = forms[pick(14, 6, 4, 4, 4, 8, 6, 6, 10, 6, 6, 14, 6, 6, 6)];
        preamble();
        switch (form) {
            case "grid", "transposed", "bare", "letters", "numbers" -> oneGrid();
            case "grids by time" -> gridsByTime();
            case "grids by wavelength" -> gridsByWavelength();
            case "grids by plate" -> gridsByPlate();
            case "list", "list of two columns", "list of wavelengths" -> list();
            case "series down" -> seriesDown();
            case "series across" -> seriesAcross();
            case "table for each well" -> tableForEachWell();
            default -> longList();
        }
        if (random.nextInt(5) == 0) {
            blank();
            line(word("Finished without remarks", "Ende der Messung", "End of record", "Signed: A. Quell"));
        }
    }

    private int pick(int... weights) {
        int at = random.nextInt(Arrays.stream(weights).sum());
        for (int i = 0; i < weights.length; i++) {
            at -= weights[i];
            if (at < 0) {
                return i;
            }
        }
        throw new AssertionError();
    }

    private String word(String... words) {
        return words[random.nextInt(words.length)];
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    private void line(Object... cells) {
        lines.add(new ArrayList<>(Arrays.asList(cells)));
    }

    private void blank() {
        lines.add(new ArrayList<>());
    }

    private String decimal(double value, int places) {
        String text = String.format(Locale.ROOT, "%." + places + "f", value);
        return comma ? text.replace('.', ',') : text;
    }

    private String row(int row) {
        return String.valueOf((char) ('A' + row));
    }

    private String well(int row, int column) {
        return row(row) + (column + 1);
    }

    /** A reading, noted as truth. */
    private Object reading(String plate, String nm, String time, String well) {
        String key = plate + "|" + nm + "|" + time + "|" + well;
        if (random.nextDouble() < markRate) {
            if (random.nextBoolean()) {
                truth.put(key, "over");
                return word(
                        "OVER",
                        "Overflow",
                        "*****",
                        "####",
                        ">3.5",
                        "> 4",
                        "OUT",
                        "SAT",
                        "+++",
                        "Überlauf",
                        "over range");
            }
            truth.put(key, "missing");
            return word("", "", "-", "n/a", "---", "NaN", "leer", "missing");
        }
        double value = chance(3) ? -random.nextInt(90) / 1e4 : 0.04 + random.nextDouble() * (chance(50) ? 0.6 : 2.4);
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        if (trimmed) {
            text = text.replaceFirst("0+$", "").replaceFirst("[.]$", "");
            text = text.equals("-0") ? "0" : text;
        }
        truth.put(key, text);
        if (isBook() && !chance(10)) {
            return Double.valueOf(text);
        }
        return comma ? text.replace('.', ',') : text;
    }

    private boolean isBook() {
        return carrier.startsWith("xls");
    }

    private void preamble() {
        if (chance(35)) {
            return;
        }
        List<Object[]> possible = new ArrayList<>(List.of(
                new Object[] {"Operator:", word("A. Quell", "J. Doe", "Mira Holm")},
                new Object[] {"Date:", "2026-03-0" + (1 + random.nextInt(9))},
                new Object[] {"Datum", "0" + (1 + random.nextInt(9)) + ".03.2026", "10:3" + random.nextInt(10)},
                new Object[] {"Start time: 09:1" + random.nextInt(10) + ":05"},
                new Object[] {"Temperature: " + decimal(37, 1) + " °C"},
                new Object[] {"Temperatur", decimal(36.8, 1)},
                new Object[] {"Shaking 5 s before reading"},
                new Object[] {"Mode", "Absorbance"},
                new Object[] {"Flashes: 25"},
                new Object[] {"Bandwidth: 9 nm"},
                new Object[] {"Settling time 200 ms"},
                new Object[] {"Blank correction: none"},
                new Object[] {
                    word("Incubation 30 min", "Lamp warm-up: 30 min", "Inkubation: 10 min", "Préchauffage 20 min")
                },
                new Object[] {
                    word("Comment: compare with 415 nm", "Lamp test at 633 nm passed", "Bemerkung: wie bei 415 nm")
                },
                new Object[] {word("Cider tanks", "Pear juice of the week", "Apfelsaft Herbst", "Run 14 of the season")
                }));
        if (form.startsWith("grid") || form.startsWith("list")) {
            possible.add(new Object[] {"Plate type:", rows * columns + " wells"});
        }
        Collections.shuffle(possible, random);
        for (Object[] each : possible.subList(0, 1 + random.nextInt(6))) {
            line(each);
            if (chance(15)) {
                blank();
            }
        }
        if (chance(90)) {
            blank();
        }
    }

    private List<Object> headings(int from, boolean padded) {
        List<Object> cells = new ArrayList<>();
        for (int column = from; column < columns; column++) {
            cells.add(
                    isBook()
                            ? (Object) (double) (column + 1)
                            : padded ? String.format(Locale.ROOT, "%02d", column + 1) : "" + (column + 1));
        }
        return cells;
    }

    /** A grid of the readings of one moment in the form of this rendering. */
    private void grid(String plate, String nm, String time, String kind) {
        boolean padded = chance(20);
        boolean lower = chance(20);
        int gap = chance(15) ? 1 + random.nextInt(2) : 0;
        boolean right = (kind.equals("grid")) && chance(20);
        boolean below = (kind.equals("grid") || kind.equals("transposed")) && chance(20);
        int offset = isBook() && chance(50) ? random.nextInt(4) : 0;
        List<List<Object>> grid = new ArrayList<>();
        if (kind.equals("transposed")) {
            List<Object> head = cells(offset + gap, word("", "", "<>"));
            for (int row = 0; row < rows; row++) {
                head.add(lower ? row(row).toLowerCase(Locale.ROOT) : row(row));
            }
            grid.add(head);
            for (int column = 0; column < columns; column++) {
                List<Object> cells =
                        cells(offset + gap, headings(column, padded).get(0));
                for (int row = 0; row < rows; row++) {
                    cells.add(reading(plate, nm, time, well(row, column)));
                }
                grid.add(cells);
            }
        } else {
            boolean sided = !kind.equals("bare") && !kind.equals("numbers");
            boolean headed = !kind.equals("bare") && !kind.equals("letters");
            if (headed) {
                List<Object> head = sided ? cells(offset + gap, word("", "", "<>", "Row")) : cells(offset, null);
                head.addAll(headings(0, padded));
                if (right) {
                    head.add("");
                    head.add("Mean");
                    head.add("SD");
                }
                grid.add(head);
            }
            for (int row = 0; row < rows; row++) {
                Object name = lower ? row(row).toLowerCase(Locale.ROOT) : row(row);
                List<Object> cells = sided ? cells(offset + gap, name) : cells(offset, null);
                for (int column = 0; column < columns; column++) {
                    cells.add(reading(plate, nm, time, well(row, column)));
                }
                if (right) {
                    cells.add("");
                    cells.add(decimal(0.5, digits));
                    cells.add(decimal(0.01, digits));
                }
                grid.add(cells);
            }
        }
        if (below) {
            if (chance(50)) {
                grid.add(new ArrayList<>());
            }
            List<Object> cells = cells(offset + gap, word("Mean", "Mittelwert", "SD", "CV %"));
            for (int i = 0; i < (kind.equals("transposed") ? rows : columns); i++) {
                cells.add(decimal(0.4 + i / 100.0, digits));
            }
            grid.add(cells);
        }
        lines.addAll(grid);
    }

    private static List<Object> cells(int gap, Object first) {
        List<Object> cells = new ArrayList<>();
        if (first == null) {
            for (int i = 0; i < gap; i++) {
                cells.add("");
            }
            return cells;
        }
        // The gap stands between name and readings in half of the cases that have one; the rest is an offset.
        cells.add(first);
        for (int i = 0; i < gap; i++) {
            cells.add("");
        }
        return cells;
    }

    private void oneGrid() {
        String nm = "";
        if (chance(30)) {
            nm = word("340", "405", "365");
            line(word("Absorbance at " + nm + " nm", nm + " nm", "Wellenlänge: " + nm + " nm", "Wavelength: " + nm));
            if (chance(50)) {
                blank();
            }
        }
        grid("", nm, "", form);
        if (form.equals("grid") && chance(20)) {
            ambiguous = true;
            blank();
            line(word(
                    "Blank corrected",
                    "Blank subtracted",
                    "Leerwertkorrigiert",
                    "Path length corrected",
                    "Normalized"));
            Map<String, String> raw = new TreeMap<>(truth);
            grid("", nm, "", form);
            truth.clear();
            truth.putAll(raw);
        }
    }

    private int[] times() {
        int count = 2 + random.nextInt(6);
        int step = new int[] {10, 15, 20, 30, 60, 120}[random.nextInt(6)];
        int start = chance(70) ? 0 : random.nextInt(60);
        int[] times = new int[count];
        for (int i = 0; i < count; i++) {
            times[i] = start + i * step;
        }
        return times;
    }

    private static String clock(int seconds) {
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }

    private void gridsByTime() {
        int style = random.nextInt(4);
        for (int time : times()) {
            switch (style) {
                case 0 -> line("Time: " + time + " s");
                case 1 -> line("Time [s]: " + time);
                case 2 -> line(clock(time));
                default -> line(word("Zeit: ", "t = ") + decimal(time / 60.0, 3) + " min");
            }
            String seconds = style == 3 ? minutes(time) : "" + time;
            grid("", "", seconds, "grid");
            blank();
        }
    }

    /** What is left of a time in s once it was rounded to thousandths of a minute. */
    private static String minutes(int time) {
        double value = Double.parseDouble(String.format(Locale.ROOT, "%.3f", time / 60.0)) * 60;
        return "" + value;
    }

    private void gridsByWavelength() {
        List<String> wavelengths = new ArrayList<>(List.of("340", "365", "405", "450", "620"));
        Collections.shuffle(wavelengths, random);
        int style = random.nextInt(3);
        boolean below = chance(20);
        for (String nm : wavelengths.subList(0, 2 + random.nextInt(2))) {
            String caption =
                    style == 0 ? nm + " nm" : style == 1 ? "Wavelength: " + nm + " nm" : "Extinktion " + nm + " nm";
            captioned(caption, below, () -> grid("", nm, "", "grid"));
        }
    }

    private void gridsByPlate() {
        int style = random.nextInt(3);
        boolean below = chance(20);
        for (int i = 1; i <= 2 + random.nextInt(2); i++) {
            String name = style == 2 ? "P" + i : "" + i;
            String caption = style == 0 ? "Plate " + name : style == 1 ? "Plate: " + name : "Platte " + name;
            captioned(caption, below, () -> grid(name, "", "", "grid"));
        }
    }

    /** A caption above or below its grid, and a blank line to the next. */
    private void captioned(String caption, boolean below, Runnable grid) {
        if (!below) {
            line(caption);
        }
        grid.run();
        if (below) {
            line(caption);
        }
        blank();
    }

    private List<int[]> wells() {
        List<int[]> wells = new ArrayList<>();
        boolean down = chance(25);
        for (int i = 0; i < rows * columns; i++) {
            wells.add(down ? new int[] {i % rows, i / rows} : new int[] {i / columns, i % columns});
        }
        if (chance(20)) {
            wells = new ArrayList<>(wells.subList(0, Math.max(4, wells.size() / 2)));
        }
        if (chance(15)) {
            Collections.shuffle(wells, random);
        }
        return wells;
    }

    private Object number(int value) {
        return isBook() ? (Object) (double) value : "" + value;
    }

    private void list() {
        boolean two = form.equals("list of two columns");
        List<String> wavelengths = form.equals("list of wavelengths") ? List.of("340", "405") : List.of("");
        boolean padded = chance(30);
        boolean names = chance(40);
        boolean temperature = chance(25);
        boolean statistics = chance(20);
        boolean after = chance(30);
        List<Object> head = new ArrayList<>();
        if (two) {
            head.addAll(chance(50) ? List.of("Row", "Column") : List.of("Zeile", "Spalte"));
        } else {
            head.add(word("Well", "well", "Position", "Well Position", "Kavität"));
        }
        if (names) {
            head.add(word("Sample", "Content", "Name", "Probe"));
        }
        if (temperature) {
            head.add(word("Temperature", "Temp. [°C]"));
        }
        for (String nm : wavelengths) {
            head.add(
                    nm.isEmpty()
                            ? word("Absorbance", "OD", "Abs", "Messwert", "Extinktion")
                            : word(nm + " nm", "OD" + nm, "Abs (" + nm + ")", "A" + nm));
        }
        if (statistics) {
            head.add("Mean");
            head.add("SD");
        }
        if (after) {
            head.add(word("Conc. [mg/L]", "Dilution", "Volume µL"));
        }
        line(head.toArray());
        int index = 0;
        for (int[] at : wells()) {
            List<Object> cells = new ArrayList<>();
            String well = well(at[0], at[1]);
            if (two) {
                cells.add(row(at[0]));
                cells.add(number(at[1] + 1));
            } else {
                cells.add(padded ? row(at[0]) + String.format(Locale.ROOT, "%02d", at[1] + 1) : well);
            }
            index++;
            if (names) {
                cells.add(word("S" + (1 + index % 30), "Tank " + index, "B1", "Blank"));
            }
            if (temperature) {
                cells.add(decimal(36.9, 1));
            }
            for (String nm : wavelengths) {
                cells.add(reading("", nm, "", well));
            }
            if (statistics) {
                cells.add(decimal(0.5, digits));
                cells.add(decimal(0.01, digits));
            }
            if (after) {
                cells.add(decimal(index * 1.5, 2));
            }
            line(cells.toArray());
        }
    }

    /** Heading and cell of a column of times. */
    private record Clockwork(String heading, int style) {}

    private Clockwork clockwork() {
        int style = random.nextInt(isBook() ? 6 : 5);
        return switch (style) {
            case 0 -> new Clockwork(word("Time [s]", "Time (s)", "time_s", "Zeit [s]", "Time in seconds"), 0);
            case 1 -> new Clockwork(word("Time [min]", "Zeit (min)"), 1);
            case 2 -> new Clockwork(word("Time", "Zeit", "Time [hh:mm:ss]"), 2);
            case 3 -> new Clockwork(word("Time [mm:ss]", "Time (min:s)"), 3);
            case 4 -> new Clockwork(word("Time", "Zeit"), 4);
            default -> new Clockwork("Time", 5);
        };
    }

    private Object cell(Clockwork clockwork, int time) {
        return switch (clockwork.style()) {
            case 0 -> number(time);
            case 1 ->
                isBook()
                        ? (Object) Double.valueOf(String.format(Locale.ROOT, "%.3f", time / 60.0))
                        : decimal(time / 60.0, 3);
            case 2 -> clock(time);
            case 3 -> String.format(Locale.ROOT, "%d:%02d", time / 60, time % 60);
            case 4 -> time + (chance(50) ? " s" : " s");
            default -> new DayTime(time / 86_400.0);
        };
    }

    private static String seconds(Clockwork clockwork, int time) {
        return clockwork.style() == 1 ? minutes(time) : "" + time;
    }

    /** A fraction of a day in a cell that shows it as a time. */
    private record DayTime(double days) {}

    private void seriesDown() {
        Clockwork clockwork = clockwork();
        boolean cycle = chance(30);
        boolean temperature = chance(30);
        boolean padded = chance(20);
        List<int[]> wells = wells();
        List<Object> head = new ArrayList<>();
        if (cycle) {
            head.add(word("Cycle", "Cycle Nr.", "Zyklus"));
        }
        head.add(clockwork.heading());
        if (temperature) {
            head.add(word("Temp. [°C]", "Temperature", "T° 340"));
        }
        for (int[] at : wells) {
            head.add(padded ? row(at[0]) + String.format(Locale.ROOT, "%02d", at[1] + 1) : well(at[0], at[1]));
        }
        line(head.toArray());
        int number = 1;
        for (int time : times()) {
            List<Object> cells = new ArrayList<>();
            if (cycle) {
                cells.add(number(number++));
            }
            cells.add(cell(clockwork, time));
            if (temperature) {
                cells.add(decimal(37, 1));
            }
            for (int[] at : wells) {
                cells.add(reading("", "", seconds(clockwork, time), well(at[0], at[1])));
            }
            line(cells.toArray());
        }
        if (chance(15)) {
            blank();
            List<Object> cells = new ArrayList<>();
            if (cycle) {
                cells.add("");
            }
            cells.add(word("Mean", "Max", "Slope"));
            if (temperature) {
                cells.add("");
            }
            wells.forEach(at -> cells.add(decimal(0.4, digits)));
            line(cells.toArray());
        }
    }

    private void seriesAcross() {
        int[] times = times();
        List<Object> head = new ArrayList<>(List.of(word("Well", "Position")));
        boolean clock = chance(40);
        for (int time : times) {
            head.add(clock ? clock(time) : time + " s");
        }
        line(head.toArray());
        for (int[] at : wells()) {
            List<Object> cells = new ArrayList<>(List.of(well(at[0], at[1])));
            for (int time : times) {
                cells.add(reading("", "", "" + time, well(at[0], at[1])));
            }
            line(cells.toArray());
        }
    }

    private void tableForEachWell() {
        Clockwork clockwork = clockwork();
        int style = random.nextInt(4);
        boolean temperature = chance(30);
        String heading = word("Absorbance", "OD", "Abs 340", "OD 340");
        String nm = heading.contains("340") ? "340" : "";
        for (int[] at : wells()) {
            String well = well(at[0], at[1]);
            switch (style) {
                case 0 -> line(well);
                case 1 -> line("Well " + well);
                case 2 -> line("Well:", well);
                default -> line("Position " + well);
            }
            line(
                    temperature
                            ? new Object[] {clockwork.heading(), heading, "Temp. [°C]"}
                            : new Object[] {clockwork.heading(), heading});
            for (int time : times()) {
                Object shown = cell(clockwork, time);
                Object reading = reading("", nm, seconds(clockwork, time), well);
                line(temperature ? new Object[] {shown, reading, decimal(37, 1)} : new Object[] {shown, reading});
            }
            if (chance(70)) {
                blank();
            }
        }
    }

    private void longList() {
        Clockwork clockwork = clockwork();
        int[] times = times();
        List<int[]> wells = wells();
        boolean byTime = chance(50);
        boolean timeFirst = chance(50);
        line(
                timeFirst ? clockwork.heading() : "Well",
                timeFirst ? "Well" : clockwork.heading(),
                word("Absorbance", "OD", "Abs"));
        for (int i = 0; i < times.length * wells.size(); i++) {
            int time = byTime ? times[i / wells.size()] : times[i % times.length];
            int[] at = byTime ? wells.get(i % wells.size()) : wells.get(i / times.length);
            Object shown = cell(clockwork, time);
            String well = well(at[0], at[1]);
            Object reading = reading("", "", seconds(clockwork, time), well);
            line(timeFirst ? shown : well, timeFirst ? well : shown, reading);
        }
    }

    /** Writes the file. */
    Path write(Path folder) throws IOException {
        Path file = folder.resolve("rendering." + carrier);
        if (isBook()) {
            book(file);
        } else {
            text(file);
        }
        return file;
    }

    private void text(Path file) throws IOException {
        List<List<String>> cells = lines.stream()
                .map(line -> line.stream().map(Object::toString).toList())
                .toList();
        StringBuilder text = new StringBuilder();
        String end = word("\n", "\r\n", "\n", "\r");
        int[] widths = widths(cells);
        for (List<String> line : cells) {
            text.append(delimiter.equals("aligned") ? aligned(line, widths) : joined(line))
                    .append(end);
        }
        if (chance(10)) {
            text.setLength(text.length() - end.length());
        }
        Charset[] charsets = {
            StandardCharsets.UTF_8, StandardCharsets.UTF_8, StandardCharsets.UTF_16LE, Charset.forName("windows-1252")
        };
        int charset = pick(60, 15, 10, 15);
        String mark = charset == 1 || charset == 2 ? "\uFEFF" : "";
        Files.write(file, (mark + text).getBytes(charsets[charset]));
    }

    private int[] widths(List<List<String>> cells) {
        Map<Integer, Integer> widths = new LinkedHashMap<>();
        for (List<String> line : cells) {
            for (int i = 0; i < line.size() && line.size() > 2; i++) {
                widths.merge(i, line.get(i).length(), Math::max);
            }
        }
        int most = widths.keySet().stream().mapToInt(Integer::intValue).max().orElse(-1);
        int[] all = new int[most + 1];
        widths.forEach((column, width) -> all[column] = Math.max(width, 4));
        return all;
    }

    private static String aligned(List<String> line, int[] widths) {
        if (line.size() <= 2) {
            return String.join("   ", line);
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < line.size(); i++) {
            text.append(i == 0 ? "" : "   ")
                    .append(" ".repeat(widths[i] - line.get(i).length()))
                    .append(line.get(i));
        }
        return text.toString();
    }

    private String joined(List<String> line) {
        boolean all = chance(5);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < line.size(); i++) {
            String cell = line.get(i);
            boolean quoted = all || cell.contains(delimiter) || cell.contains("\"");
            text.append(i == 0 ? "" : delimiter).append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
        }
        return text.toString();
    }

    private void book(Path file) throws IOException {
        try (Workbook book = carrier.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            if (chance(20)) {
                book.createSheet("Notes").createRow(0).createCell(0).setCellValue("nothing to see");
            }
            Sheet sheet = book.createSheet(word("Run", "Sheet1", "Results"));
            CellStyle time = book.createCellStyle();
            time.setDataFormat(book.createDataFormat().getFormat(word("h:mm:ss", "[h]:mm:ss", "mm:ss")));
            int down = random.nextInt(3);
            int right = random.nextInt(3);
            for (int r = 0; r < lines.size(); r++) {
                Row row = sheet.createRow(r + down);
                for (int c = 0; c < lines.get(r).size(); c++) {
                    Object value = lines.get(r).get(c);
                    if (value.equals("")) {
                        continue;
                    }
                    Cell cell = row.createCell(c + right);
                    if (value instanceof DayTime day) {
                        cell.setCellValue(day.days());
                        cell.setCellStyle(time);
                    } else if (value instanceof Double number) {
                        cell.setCellValue(number);
                    } else {
                        cell.setCellValue(value.toString());
                    }
                }
            }
            book.write(out);
        }
    }
}
