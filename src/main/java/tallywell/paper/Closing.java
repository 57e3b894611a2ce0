package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import tallywell.report.DecisionWords;
import tallywell.report.Report;

/**
 * What stands below the results of a run: what a person decided, cautions, and room to sign. It keeps together on one
 * page, since whoever signs has to see what the signature is for; only decisions too many for that go before.
 */
final class Closing {
    private static final double SIZE = 7.4;
    private static final double ABOVE_LINE = 17;
    private static final String[] SIGNING = {"Checked by", "Approved by"};
    private static final double[] FROM = {0, 250, 360};
    private static final double[] TO = {240, 350, Flow.WIDTH};

    private final Report report;
    private final Paper paper;
    private final Flow flow;

    Closing(Report report, Paper paper, Flow flow) {
        this.report = report;
        this.paper = paper;
        this.flow = flow;
    }

    void write() throws IOException {
        List<String> decisions = DecisionWords.of(report.analysis().assay());
        List<String> cautions = cautions();
        double signing = flow.besideHeight(cautions, SIZE) + SIGNING.length * ABOVE_LINE;
        if (!decisions.isEmpty()) {
            double all = flow.besideHeight(decisions, SIZE) + signing;
            flow.need(flow.fitsOnAPage(all) ? all : 0);
            flow.beside("Decided by a person", decisions, SIZE, Ink.TEXT);
        }
        flow.need(signing);
        flow.beside("Cautions", cautions, SIZE, Ink.TEXT);
        signatures();
    }

    private List<String> cautions() {
        List<String> cautions =
                new ArrayList<>(report.analysis().assay().method().cautions());
        cautions.add(
                "Not for diagnosis. Results that decide on safety or on a label need review by a qualified person before"
                        + " they are used.");
        return cautions;
    }

    /** Room to sign by hand. */
    private void signatures() throws IOException {
        for (String who : SIGNING) {
            flow.space(ABOVE_LINE);
            double y = flow.y();
            Page page = flow.page();
            PDStructureElement line = Tags.child(paper.top(), "P");
            String[] labels = {who, "Date", "Signature"};
            for (int i = 0; i < labels.length; i++) {
                double from = Flow.LEFT + FROM[i];
                page.text(line, labels[i], Face.PLAIN, SIZE, Ink.SOFT, from, y);
                double label = paper.letters().width(labels[i], Face.PLAIN, SIZE) + 4;
                page.line(Ink.SOFT, 0.5, from + label, y + 1.5, Flow.LEFT + TO[i], y + 1.5);
            }
        }
    }
}
