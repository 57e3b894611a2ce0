package tallywell.paper;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import tallywell.report.Report;
import tallywell.workup.Assay;

/**
 * The summary of runs as a document: a page to hand on and to sign, then acceptance, calibration and flagged traces; with
 * many runs a section for each, with a bookmark.
 *
 * <p>The same reports give the same bytes, wherever the same fonts are installed.
 */
public final class SummaryDocument implements Closeable {
    private final Paper paper;
    private final List<Report> reports = new ArrayList<>();
    private final List<SummarySection> sections = new ArrayList<>();

    /** A document without pages. */
    public SummaryDocument() throws IOException {
        paper = new Paper();
    }

    /** Adds the pages of a run. */
    public void add(Report report) throws IOException {
        sections.add(new SummarySection(report, paper));
        reports.add(report);
    }

    /**
     * Writes the document.
     *
     * @param workbook name of the workbook of the same call
     * @param sha256 of its bytes, in hexadecimal
     * @param out where to; left open
     */
    public void write(String workbook, String sha256, OutputStream out) throws IOException {
        if (reports.isEmpty()) {
            throw new IllegalStateException("a document needs a run");
        }
        paper.write(facts(), () -> name(workbook + ", SHA-256 " + sha256), out);
    }

    private void name(String workbook) throws IOException {
        for (SummarySection section : sections) {
            section.nameWorkbook(workbook);
        }
    }

    private Facts facts() {
        Report report = reports.get(0);
        Assay assay = report.analysis().assay();
        String title = report.title();
        boolean one = reports.size() == 1;
        return new Facts(
                one ? title : "Summary of " + reports.size() + " runs",
                one ? assay.operator() : "",
                one ? assay.method().title() : "Enzymatic assays, worked up",
                report.provenance().version(),
                report.provenance().made());
    }

    @Override
    public void close() throws IOException {
        paper.close();
    }
}
