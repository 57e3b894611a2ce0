package tallywell.exchange;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tallywell.method.AssayMethod;
import tallywell.notice.OutputException;
import tallywell.quantity.Unit;
import tallywell.report.CsvRows;
import tallywell.report.Provenance;
import tallywell.report.Report;
import tallywell.report.ResultsTable;
import tallywell.report.WellsTable;
import tallywell.workup.StepAnalysis;

/**
 * A data package in the making: the tables, {@code results.json}, the files that the runs were worked up from, and
 * {@code datapackage.json}, which describes them. Runs are written as they come, so that memory does not grow with them.
 */
public final class DataPackage implements Closeable {
    /** The file that describes the package. */
    public static final String DESCRIPTOR = "datapackage.json";

    private final Target target;
    private final Provenance made;
    private final Map<String, MeasuredStream> streams = new LinkedHashMap<>();
    private final List<Resource> files = new ArrayList<>();
    private final Set<String> people = new LinkedHashSet<>();
    private final Set<String> methods = new LinkedHashSet<>();
    private final Map<String, String> units = new TreeMap<>();
    private final List<Closeable> open = new ArrayList<>();
    private final ResultsTable results;
    private final WellsTable wells;
    private final ReadingsTable readings;
    private final BudgetTable budget;
    private final ResultsDocument document;
    private String title = "";
    private int runs;

    /** Opens files of the package. */
    @FunctionalInterface
    public interface Target {
        /**
         * Opens a new file.
         *
         * @param path in the package, parts separated by {@code /}
         */
        OutputStream open(String path) throws OutputException;
    }

    /**
     * Starts a package.
     *
     * @param target where its files go
     * @param made by what and when; its inputs do not matter
     */
    public DataPackage(Target target, Provenance made) throws IOException, OutputException {
        this.target = target;
        this.made = made;
        results = opened(new ResultsTable(writer("results.csv")));
        wells = opened(new WellsTable(writer("wells.csv")));
        readings = opened(new ReadingsTable(writer("readings.csv")));
        budget = opened(new BudgetTable(writer("budget.csv")));
        document = opened(new ResultsDocument(made, stream("results.json")));
    }

    private <T extends Closeable> T opened(T part) {
        open.add(part);
        return part;
    }

    private OutputStream stream(String path) throws OutputException {
        OutputStream file = target.open(path);
        open.add(file);
        MeasuredStream stream = new MeasuredStream(new BufferedOutputStream(file, 1 << 16));
        streams.put(path, stream);
        return stream;
    }

    private Writer writer(String path) throws OutputException {
        return new BufferedWriter(new OutputStreamWriter(stream(path), StandardCharsets.UTF_8), 1 << 14);
    }

    /** Adds a run. */
    public void add(Report report) throws IOException {
        results.add(report);
        wells.add(report);
        readings.add(report);
        budget.add(report);
        document.add(report);
        AssayMethod method = report.analysis().assay().method();
        methods.add(method.title() + (method.source().isEmpty() ? "" : ": " + method.source()));
        String operator = report.analysis().assay().operator();
        if (!operator.isEmpty()) {
            people.add(operator);
        }
        report.analysis().results().forEach(each -> unit(each.unit()));
        for (StepAnalysis step : report.analysis().steps()) {
            step.wells().forEach(each -> unit(each.unit()));
        }
        String own = report.analysis().assay().title();
        runs++;
        title = runs > 1 ? "Results of " + runs + " runs" : own.isEmpty() ? report.run() : own;
    }

    private void unit(Unit unit) {
        units.put(unit.symbol(), Ucum.of(unit));
    }

    /**
     * Adds a file that runs were worked up from.
     *
     * @param path in the package, parts separated by {@code /}; none may be added twice
     * @param what the file is, in words
     * @param content its bytes
     * @return the hash of its bytes
     */
    public String file(String path, String what, byte[] content) throws IOException, OutputException {
        String title = path.substring(path.lastIndexOf('/') + 1);
        Resource resource = whole("file-" + (files.size() + 1), path, title, what, mediaType(path), content);
        files.add(resource);
        return resource.sha256();
    }

    private Resource whole(
            String name, String path, String heading, String description, String mediaType, byte[] content)
            throws IOException, OutputException {
        try (MeasuredStream stream = new MeasuredStream(target.open(path))) {
            stream.write(content);
            return new Resource(
                    name, path, heading, description, mediaType, List.of(), stream.bytes(), stream.sha256());
        }
    }

    /** Source of the names: IANA media types; YAML by RFC 9512. */
    private static String mediaType(String path) {
        String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return switch (ending) {
            case "csv" -> "text/csv";
            case "tsv" -> "text/tab-separated-values";
            case "txt", "asc", "dat" -> "text/plain";
            case "yaml", "yml" -> "application/yaml";
            case "xls" -> "application/vnd.ms-excel";
            case "xlsx" -> "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
            default -> "application/octet-stream";
        };
    }

    /** Ends the package with what describes it; nothing can be added any more. */
    public void finish() throws IOException, OutputException {
        try (CsvRows rows = new CsvRows(writer("units.csv"), Column.names(Tables.UNITS))) {
            for (Map.Entry<String, String> each : units.entrySet()) {
                rows.text(each.getKey());
                rows.text(each.getValue());
                rows.end();
            }
        }
        document.finish();
        close();
        List<Resource> all = resources();
        Descriptor.write(new Descriptor.About(title, made, people, methods), all, target.open(DESCRIPTOR));
    }

    private static byte[] schema() throws IOException {
        try (InputStream in = DataPackage.class.getResourceAsStream("/tallywell/" + ResultsDocument.SCHEMA)) {
            if (in == null) {
                throw new IllegalStateException("the program file is damaged: " + ResultsDocument.SCHEMA);
            }
            return in.readAllBytes();
        }
    }

    private List<Resource> resources() throws IOException, OutputException {
        List<Resource> all = new ArrayList<>();
        all.add(table(
                "results.csv",
                "Results",
                "One row for each sample, control and spike and each analyte",
                Tables.RESULTS));
        all.add(table("wells.csv", "Wells", "One row for each well and step, every role but unused", Tables.WELLS));
        all.add(table("readings.csv", "Readings", "Every reading, as it was read", ReadingsTable.COLUMNS));
        all.add(table(
                "budget.csv", "Budget of uncertainty", "One row for each source of each result", BudgetTable.COLUMNS));
        all.add(table("units.csv", "Units", "The units of the other tables with their UCUM codes", Tables.UNITS));
        all.add(measured(
                "results.json",
                "results-document",
                "Results as one document",
                "Runs, acceptance, calibrations, results, exclusions and hashes; described by "
                        + ResultsDocument.SCHEMA,
                "application/json",
                List.of()));
        all.add(whole(
                "results-schema",
                ResultsDocument.SCHEMA,
                "Schema",
                "JSON schema of results.json",
                "application/schema+json",
                schema()));
        all.addAll(files);
        return all;
    }

    private Resource table(String path, String heading, String description, List<Column> columns) {
        return measured(path, path.replace(".csv", ""), heading, description, "text/csv", columns);
    }

    private Resource measured(
            String path, String name, String heading, String description, String mediaType, List<Column> columns) {
        MeasuredStream stream = streams.get(path);
        if (stream == null) {
            throw new IllegalStateException("nothing was written to " + path);
        }
        return new Resource(name, path, heading, description, mediaType, columns, stream.bytes(), stream.sha256());
    }

    /** Closes what is open, whether it is whole or not, the latest first: what it still holds goes to the file below. */
    @Override
    public void close() throws IOException {
        IOException failed = null;
        for (int i = open.size() - 1; i >= 0; i--) {
            try {
                open.get(i).close();
            } catch (IOException e) {
                failed = failed == null ? e : failed;
            }
        }
        open.clear();
        if (failed != null) {
            throw failed;
        }
    }
}
