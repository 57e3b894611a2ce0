package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.exchange.Schemas;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;

/** Data packages, held against the published profiles and against themselves. */
class PackageTest {
    private static final String CIDER = "samples/cider-l-malic";

    @TempDir
    private static Path shared;

    @TempDir
    private Path folder;

    private static Path cider;

    @BeforeAll
    static void packTheCiderOnce() throws Exception {
        cider = pack(shared, "package", false, run("cider-l-malic"));
    }

    private Path pack(String name, boolean overwrite, Path... runs) throws Exception {
        return pack(folder, name, overwrite, runs);
    }

    private static Path pack(Path folder, String name, boolean overwrite, Path... runs) throws Exception {
        Path to = folder.resolve(name);
        WorkUp.Outcome outcome = new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(runs),
                                Optional.empty(),
                                new Wanted(
                                        Optional.of(folder.resolve("out.xlsx")),
                                        Optional.of(folder.resolve("tables")),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.of(to),
                                        overwrite),
                                Instant.parse("2026-03-09T13:05:00.123Z"),
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
        assertThat(outcome.written()).contains(to);
        return to;
    }

    private static Path run(String sample) {
        return Path.of("samples", sample, "run.yaml");
    }

    @ParameterizedTest
    @ValueSource(strings = {"cider-l-malic", "cuvette-typed", "juice-glucose-fructose", "puree-citric-solids"})
    void descriptorFollowsThePublishedProfiles(String sample) throws Exception {
        Path made = pack("package", false, run(sample));
        JsonNode descriptor = Schemas.read(made.resolve("datapackage.json"));
        assertThat(Schemas.ofFrictionless("data-package", descriptor)).isEmpty();
        List<String> tables = new ArrayList<>();
        for (JsonNode resource : descriptor.get("resources")) {
            if (resource.get("profile").asText().equals("tabular-data-resource")) {
                assertThat(Schemas.ofFrictionless("tabular-data-resource", resource))
                        .as(resource.get("name").asText())
                        .isEmpty();
                tables.add(resource.get("name").asText());
                table(made, resource);
            }
            intact(made, resource);
        }
        assertThat(tables).containsExactly("results", "wells", "readings", "budget", "units");
        assertThat(descriptor.get("created").asText()).isEqualTo("2026-03-09T13:05:00Z");
        assertThat(descriptor.has("licenses")).isFalse();
    }

    /** The validator must be able to find fault, or the test above would say nothing. */
    @Test
    void profilesRefuseWhatIsNoPackage() throws Exception {
        JsonNode descriptor =
                Schemas.read(pack("package", false, run("cuvette-typed")).resolve("datapackage.json"));
        ((ObjectNode) descriptor).put("name", "Not a name");
        assertThat(Schemas.ofFrictionless("data-package", descriptor)).hasSize(1);
        JsonNode resource = descriptor.get("resources").get(0);
        ((ObjectNode) resource.get("schema").get("fields").get(0)).put("type", "word");
        assertThat(Schemas.ofFrictionless("tabular-data-resource", resource)).isNotEmpty();
    }

    private static void intact(Path made, JsonNode resource) throws Exception {
        byte[] bytes = Files.readAllBytes(made.resolve(resource.get("path").asText()));
        assertThat(resource.get("bytes").asLong()).isEqualTo(bytes.length);
        assertThat(resource.get("hash").asText())
                .isEqualTo("sha256:"
                        + HexFormat.of()
                                .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    }

    /** Holds the cells of a table against what its fields say of them. */
    private static void table(Path made, JsonNode resource) throws IOException {
        List<CSVRecord> rows = rows(made.resolve(resource.get("path").asText()));
        JsonNode fields = resource.get("schema").get("fields");
        assertThat(rows).isNotEmpty();
        assertThat(rows.get(0).getParser().getHeaderNames()).containsExactlyElementsOf(fields.findValuesAsText("name"));
        List<String> units = rows(made.resolve("units.csv")).stream()
                .map(each -> each.get("unit"))
                .toList();
        for (CSVRecord row : rows) {
            for (JsonNode field : fields) {
                cell(row.get(field.get("name").asText()), field, row.toString());
            }
            if (row.isMapped("unit") && !row.get("unit").isEmpty()) {
                assertThat(units).contains(row.get("unit"));
            }
        }
    }

    private static void cell(String cell, JsonNode field, String where) {
        String what = field.get("name").asText() + " of " + where;
        JsonNode constraints = field.path("constraints");
        if (cell.isEmpty()) {
            assertThat(constraints.path("required").asBoolean()).as(what).isFalse();
            return;
        }
        switch (field.get("type").asText()) {
            case "number" -> assertThat(Double.parseDouble(cell)).as(what).isFinite();
            case "integer" -> assertThat(cell).as(what).matches("[0-9]+");
            case "boolean" -> assertThat(cell).as(what).isIn("yes", "no");
            default -> {
                if (constraints.has("enum")) {
                    assertThat(constraints.get("enum").findValuesAsText(""))
                            .as(what)
                            .isEmpty();
                    List<String> words = new ArrayList<>();
                    constraints.get("enum").forEach(each -> words.add(each.asText()));
                    assertThat(words).as(what).contains(cell);
                }
                if (constraints.has("pattern")) {
                    assertThat(cell).as(what).matches(constraints.get("pattern").asText());
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cider-l-malic",
                "cider-malic-kinetic",
                "cuvette-typed",
                "juice-glucose-fructose",
                "puree-citric-solids"
            })
    void documentFollowsItsSchemaAndSaysWhatTheTableSays(String sample) throws Exception {
        Path made = pack("package", false, run(sample));
        JsonNode document = Schemas.read(made.resolve("results.json"));
        assertThat(Schemas.ofResults(document)).isEmpty();
        assertThat(made.resolve("results.schema.json")).hasSameBinaryContentAs(Path.of("docs/results.schema.json"));
        List<CSVRecord> rows = rows(made.resolve("results.csv"));
        JsonNode results = document.get("runs").get(0).get("results");
        assertThat(results).hasSameSizeAs(rows);
        for (int i = 0; i < rows.size(); i++) {
            JsonNode result = results.get(i);
            CSVRecord row = rows.get(i);
            assertThat(result.get("sample").asText()).isEqualTo(row.get("sample"));
            assertThat(result.get("unit").get("symbol").asText()).isEqualTo(row.get("unit"));
            assertThat(result.get("verdict").asText()).isEqualTo(row.get("verdict"));
            Map.of(
                            "value",
                            "value",
                            "u",
                            "u",
                            "U",
                            "U",
                            "k",
                            "k",
                            "cvPercent",
                            "cv_percent",
                            "dilution",
                            "dilution",
                            "recoveryPercent",
                            "recovery_percent",
                            "assigned",
                            "assigned")
                    .forEach((key, column) -> same(result.get(key), row.get(column)));
        }
    }

    /** The same double, bit for bit. */
    private static void same(JsonNode number, String cell) {
        if (cell.isEmpty()) {
            assertThat(number.isNull()).isTrue();
        } else {
            assertThat(number.asDouble()).isEqualTo(Double.parseDouble(cell));
        }
    }

    @Test
    void schemaRefusesWhatWouldMislead() throws Exception {
        JsonNode document = Schemas.read(cider.resolve("results.json"));
        ObjectNode result =
                (ObjectNode) document.get("runs").get(0).get("results").get(0);
        JsonNode before = result.deepCopy();
        result.put("verdict", "fine");
        assertThat(Schemas.ofResults(document)).hasSize(1);
        result.setAll((ObjectNode) before.deepCopy());
        result.putNull("u");
        assertThat(Schemas.ofResults(document)).as("U without u").isNotEmpty();
        result.setAll((ObjectNode) before.deepCopy());
        result.put("unknown", 1);
        assertThat(Schemas.ofResults(document)).isNotEmpty();
        result.remove("unknown");
        ((ArrayNode) document.get("runs").get(0).get("inputs"))
                .removeAll()
                .addObject()
                .put("sha256", "12");
        assertThat(Schemas.ofResults(document)).isNotEmpty();
    }

    @Test
    void tablesAreThoseOfTheOtherOption() throws Exception {
        Path made = cider;
        assertThat(made.resolve("results.csv")).hasSameBinaryContentAs(shared.resolve("tables/results.csv"));
        assertThat(made.resolve("wells.csv")).hasSameBinaryContentAs(shared.resolve("tables/wells.csv"));
    }

    @Test
    void effectsOfTheBudgetAddUpToTheUncertainty() throws Exception {
        Path made = cider;
        Map<String, Double> squares = new TreeMap<>();
        Map<String, Double> shares = new TreeMap<>();
        for (CSVRecord row : rows(made.resolve("budget.csv"))) {
            String key = row.get("role") + row.get("slot") + row.get("sample");
            squares.merge(key, Math.pow(Double.parseDouble(row.get("effect")), 2), Double::sum);
            shares.merge(key, Double.parseDouble(row.get("share")), Double::sum);
        }
        int compared = 0;
        for (CSVRecord row : rows(made.resolve("results.csv"))) {
            if (!row.get("u").isEmpty()) {
                String key = row.get("role") + row.get("slot") + row.get("sample");
                assertThat(Math.sqrt(squares.get(key)))
                        .isCloseTo(
                                Double.parseDouble(row.get("u")),
                                org.assertj.core.data.Percentage.withPercentage(1e-10));
                assertThat(shares.get(key)).isCloseTo(1, org.assertj.core.data.Offset.offset(1e-12));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(30);
    }

    @Test
    void readingsAreThoseOfTheExports() throws Exception {
        Path made = cider;
        List<CSVRecord> rows = rows(made.resolve("readings.csv"));
        assertThat(rows).hasSize(2 * 96);
        // samples/cider-l-malic/after.csv, row B, column 1
        String typed = Files.readString(Path.of(CIDER, "after.csv"))
                .lines()
                .filter(line -> line.startsWith("B"))
                .findFirst()
                .orElseThrow()
                .split("[,;\t]")[1];
        assertThat(rows.stream()
                        .filter(each -> each.get("reading").equals("2")
                                && each.get("well").equals("B1"))
                        .map(each -> each.get("absorbance")))
                .containsExactly(Double.toString(Double.parseDouble(typed)));
    }

    /** A package stands alone: its own copy of the run leads to the same results. */
    @Test
    void runCanBeWorkedUpAgainFromThePackage() throws Exception {
        Path made = pack("package", false, run("cider-l-malic"), run("juice-glucose-fructose"));
        Path inputs = made.resolve("inputs");
        Path again = pack(
                "again",
                true,
                inputs.resolve("samples/cider-l-malic/run.yaml"),
                inputs.resolve("samples/juice-glucose-fructose/run.yaml"));
        List<CSVRecord> first = rows(made.resolve("results.csv"));
        List<CSVRecord> second = rows(again.resolve("results.csv"));
        assertThat(second).hasSameSizeAs(first);
        for (int i = 0; i < first.size(); i++) {
            assertThat(second.get(i).toList().subList(1, 20))
                    .isEqualTo(first.get(i).toList().subList(1, 20));
        }
        assertThat(made.resolve("methods/d-glucose-d-fructose-340.yaml")).isNotEmptyFile();
    }

    @Test
    void sameRunsAndTimeGiveTheSameBytes() throws Exception {
        Path one = pack("one", true, run("cider-l-malic"), run("cuvette-typed"));
        Path other = pack("other", true, run("cider-l-malic"), run("cuvette-typed"));
        try (Stream<Path> files = Files.walk(one)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertThat(other.resolve(one.relativize(file))).hasSameBinaryContentAs(file);
            }
        }
    }

    @Test
    void folderThatHoldsSomethingIsLeftAloneWithoutForce() throws Exception {
        Path to = Files.createDirectories(folder.resolve("package"));
        Files.writeString(to.resolve("mine.txt"), "mine");
        assertThatThrownBy(() -> pack("package", false, run("cuvette-typed")))
                .isInstanceOf(OutputException.class)
                .hasMessageEndingWith(
                        "the folder is not empty; use --force to write into it all the same, or choose another");
        assertThat(names(to)).containsExactly("mine.txt");
        assertThat(folder.resolve("out.xlsx")).doesNotExist();
    }

    @Test
    void forceReplacesTheFilesOfThePackageAndNoOthers() throws Exception {
        Path to = Files.createDirectories(folder.resolve("package"));
        Files.writeString(to.resolve("mine.txt"), "mine");
        pack("package", true, run("cuvette-typed"));
        pack("package", true, run("cuvette-typed"));
        assertThat(to.resolve("mine.txt")).hasContent("mine");
        assertThat(rows(to.resolve("results.csv"))).isNotEmpty();
        Files.writeString(to.resolve("results.csv"), "mine");
        assertThatThrownBy(() -> pack("package", true, run("cuvette-typed")))
                .hasMessageContaining("results.csv: was not written by this program");
    }

    @Test
    void failureLeavesNothingAndTheOldFilesAsTheyWere() throws Exception {
        Path to = Files.createDirectories(folder.resolve("package"));
        Files.writeString(to.resolve("results.csv"), "old");
        // A folder stands where a file should go.
        Files.createDirectories(to.resolve("datapackage.json/inside"));
        assertThatThrownBy(() -> pack("package", true, run("cuvette-typed"))).isInstanceOf(OutputException.class);
        assertThat(names(to)).containsExactly("datapackage.json", "results.csv");
        assertThat(to.resolve("results.csv")).hasContent("old");
        assertThat(folder.resolve("out.xlsx")).doesNotExist();
        assertThat(folder.resolve("tables")).doesNotExist();
    }

    @Test
    void ownFilesOfTheRunAreNeverReplaced() throws Exception {
        Path made = pack("package", false, run("cuvette-typed"));
        Path copy = made.resolve("inputs/samples/cuvette-typed/run.yaml");
        assertThat(copy).exists();
        Path top = made.resolve("inputs");
        Files.move(top.resolve("samples"), folder.resolve("samples"));
        Files.move(top.resolve("plate-layouts"), folder.resolve("plate-layouts"));
        Path moved = folder.resolve("samples/cuvette-typed/run.yaml");
        Path inputs = Files.createDirectories(folder.resolve("x"));
        Files.createSymbolicLink(inputs.resolve("inputs"), folder);
        assertThatThrownBy(() -> pack("x", true, moved))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("is one of the files read");
    }

    /** Names that other programs take for something else are only text here. */
    @Test
    void hostileNamesAreKeptAndHarmless() throws Exception {
        Path at = Files.createDirectories(folder.resolve("samples/..hidden..name"));
        try (Stream<Path> files = Files.list(Path.of("samples/cuvette-typed"))) {
            for (Path file : files.toList()) {
                Files.copy(file, at.resolve(file.getFileName()));
            }
        }
        Files.createDirectories(folder.resolve("plate-layouts"));
        try (Stream<Path> files = Files.list(Path.of("plate-layouts"))) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve("plate-layouts").resolve(file.getFileName()));
            }
        }
        String list = Files.readString(at.resolve("samples.csv"), StandardCharsets.UTF_8);
        String name = "=1+1 \"x\" \uD83C\uDF4E </script>";
        char delimiter = list.contains(";") ? ';' : ',';
        String first = list.lines().skip(1).findFirst().orElseThrow();
        String[] cells = first.split(String.valueOf(delimiter), -1);
        cells[1] = '"' + name.replace("\"", "\"\"") + '"';
        Files.writeString(
                at.resolve("samples.csv"), list.replace(first, String.join(String.valueOf(delimiter), cells)));
        Path made = pack("package", true, at.resolve("run.yaml"));
        JsonNode document = Schemas.read(made.resolve("results.json"));
        assertThat(Schemas.ofResults(document)).isEmpty();
        assertThat(document.findValuesAsText("sample")).contains(name);
        JsonNode descriptor = Schemas.read(made.resolve("datapackage.json"));
        assertThat(Schemas.ofFrictionless("data-package", descriptor)).isEmpty();
        assertThat(descriptor.findValuesAsText("path")).allMatch(path -> !path.startsWith("/") && !path.contains(".."));
    }

    @Test
    void fileThatComesTwiceStandsInThePackageOnce() {
        PackedInputs inputs = new PackedInputs();
        inputs.add(Path.of(CIDER, "run.yaml"), "run", "0");
        inputs.add(Path.of(CIDER, "run.yaml"), "run", "0");
        assertThat(inputs.placed()).containsOnlyKeys("inputs/run.yaml");
    }

    private static List<String> names(Path in) throws IOException {
        try (Stream<Path> files = Files.list(in)) {
            return files.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    private static List<CSVRecord> rows(Path file) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(file, StandardCharsets.UTF_8))
                .getRecords();
    }

    @Test
    void runThatCannotBeWorkedUpLeavesNoPackage() throws Exception {
        Path run = folder.resolve("run.yaml");
        Files.writeString(run, "tallywell: run/1\nmethod: l-malic-340\n");
        assertThatThrownBy(() -> pack("package", false, run)).isInstanceOf(InputException.class);
        assertThat(folder.resolve("package")).doesNotExist();
    }
}
