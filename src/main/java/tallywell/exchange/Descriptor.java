package tallywell.exchange;

import java.io.IOException;
import java.io.OutputStream;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import tallywell.report.Provenance;

/**
 * Writes {@code datapackage.json}, which says what stands in a package and in the columns of its tables.
 *
 * <p>Units are no part of the specification. A field says the UCUM code of its numbers under {@code unit}, or under
 * {@code unitField} the name of the field in which each row names its unit; the table {@code units} has the codes.
 *
 * <p>Source: Frictionless Data, Data Package, Tabular Data Resource and Table Schema, version 1 (2017), whose published
 * JSON profiles the tests hold it against. No licence is stated: that is for whoever publishes the data.
 */
final class Descriptor {
    private static final String DESCRIPTION =
            "Results of enzymatic end-point assays on microplates, as Tallywell %s worked them up, with the readings, the"
                    + " budget of uncertainty and the files that they come from. Units stand in the Unified Code for Units"
                    + " of Measure (UCUM): of a whole column under unit, else the column that unitField names has the unit"
                    + " of each row, and the table units its code. An empty cell means no value. No licence is stated; add"
                    + " licenses before you publish the package. Not for diagnosis.";

    private final Json json;

    private Descriptor(Json json) {
        this.json = json;
    }

    /**
     * What is said of the package as a whole.
     *
     * @param title in words
     * @param made by what and when
     * @param people who did the work
     * @param methods titles and sources of the methods
     */
    record About(String title, Provenance made, Set<String> people, Set<String> methods) {}

    /** Writes the descriptor and closes the stream. */
    static void write(About about, List<Resource> resources, OutputStream out) throws IOException {
        try (Json json = new Json(out)) {
            json.begin();
            new Descriptor(json).write(about, resources);
            json.end();
        }
    }

    private void write(About about, List<Resource> resources) throws IOException {
        json.text("profile", "data-package");
        json.text("name", name(about.title()));
        json.text("title", about.title());
        json.text("description", DESCRIPTION.replace("%s", about.made().version()));
        json.text("created", about.made().made().truncatedTo(ChronoUnit.SECONDS).toString());
        json.texts("keywords", List.of("enzymatic assay", "microplate", "absorbance", "UCUM"));
        if (!about.people().isEmpty()) {
            json.objects("contributors", about.people(), person -> {
                json.text("title", person);
                json.text("role", "contributor");
            });
        }
        json.objects("sources", about.methods(), method -> json.text("title", method));
        json.objects("resources", resources, this::resource);
    }

    /** The title as the specification allows it for names; never empty. */
    static String name(String title) {
        String plain = title.toLowerCase(java.util.Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-+|-+$", "");
        return plain.isEmpty() ? "results" : plain;
    }

    private void resource(Resource each) throws IOException {
        boolean table = !each.columns().isEmpty();
        json.text("profile", table ? "tabular-data-resource" : "data-resource");
        json.text("name", each.name());
        json.text("path", each.path());
        json.text("title", each.title());
        json.text("description", each.description());
        if (!each.format().isEmpty()) {
            json.text("format", each.format());
        }
        json.text("mediatype", each.mediaType());
        json.number("bytes", each.bytes());
        json.text("hash", "sha256:" + each.sha256());
        if (table) {
            json.text("encoding", "utf-8");
            json.object("dialect", this::dialect);
            json.object("schema", () -> schema(each.columns()));
        }
    }

    /** RFC 4180. */
    private void dialect() throws IOException {
        json.text("delimiter", ",");
        json.text("lineTerminator", "\r\n");
        json.text("quoteChar", "\"");
        json.bool("doubleQuote", true);
        json.bool("skipInitialSpace", false);
        json.bool("header", true);
    }

    private void schema(List<Column> columns) throws IOException {
        json.objects("fields", columns, this::field);
        json.texts("missingValues", List.of(""));
        if (columns == Tables.UNITS) {
            json.texts("primaryKey", List.of("unit"));
        } else if (Column.names(columns).contains("unit")) {
            json.beginArray("foreignKeys");
            json.object(() -> {
                json.text("fields", "unit");
                json.object("reference", () -> {
                    json.text("resource", "units");
                    json.text("fields", "unit");
                });
            });
            json.endArray();
        }
    }

    private void field(Column column) throws IOException {
        json.text("name", column.name());
        json.text("type", column.type());
        json.text("description", column.description());
        if (!column.unit().isEmpty()) {
            json.text("unit", column.unit());
        }
        if (column.unitPerRow()) {
            json.text("unitField", "unit");
        }
        if (column.type().equals("boolean")) {
            json.texts("trueValues", List.of("yes"));
            json.texts("falseValues", List.of("no"));
        }
        if (column.isRequired()
                || !column.words().isEmpty()
                || !column.pattern().isEmpty()) {
            json.object("constraints", () -> constraints(column));
        }
    }

    private void constraints(Column column) throws IOException {
        if (column.isRequired()) {
            json.bool("required", true);
        }
        if (!column.words().isEmpty()) {
            json.texts("enum", column.words());
        }
        if (!column.pattern().isEmpty()) {
            json.text("pattern", column.pattern());
        }
    }
}
