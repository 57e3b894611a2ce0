package tallywell.report;

import java.io.IOException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tallywell.method.AssayMethod;
import tallywell.method.Run;
import tallywell.notice.Notice;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Assay;

/** Writes the sheet Provenance: what the report was made from, by which version, and what people decided. */
final class ProvenanceSheet {
    private static final Look LABEL = Looks.LABEL.align(Look.Align.TOP);
    private static final Look CODE = Looks.NOTE;
    private static final int WIDTH = 112;
    private static final int LINE_PT = 13;

    private final Report report;
    private final Sheet sheet;
    private int row;

    private ProvenanceSheet(Report report, Sheet sheet) {
        this.report = report;
        this.sheet = sheet;
    }

    static void write(Report report, Sheet sheet) throws IOException {
        new ProvenanceSheet(report, sheet).write();
    }

    private void write() throws IOException {
        Assay assay = report.analysis().assay();
        AssayMethod method = assay.method();
        sheet.row(row++, 26);
        sheet.text(0, "Provenance", Looks.TITLE);
        row++;
        line("Made", report.provenance().madeText());
        line("Version", "Tallywell " + report.provenance().version());
        line(
                "Options",
                report.provenance().options().isEmpty()
                        ? "none"
                        : report.provenance().options());
        line("Run", report.run());
        line("Title", assay.title());
        line("Operator", assay.operator().isEmpty() ? "not stated" : assay.operator());
        line("Layout", assay.layout().name());
        line("Method", method.title() + " (" + method.id() + ")");
        line("Source of the method", method.source().isEmpty() ? "not stated" : method.source());
        files();
        exclusions(assay);
        choices(assay);
        notices(report.analysis().notices());
        note();
        sheet.widths(24, 50, 66);
        sheet.print(true, false, 0, report.run());
    }

    private void line(String label, String text) throws IOException {
        sheet.row(row++, LINE_PT * ChecksSheet.lines(text, WIDTH));
        sheet.text(0, label, LABEL);
        sheet.banner(1, 2, text, Looks.WRAPPED);
    }

    private void section(String title) throws IOException {
        row++;
        sheet.row(row++, 20);
        sheet.text(0, title, Looks.SECTION);
    }

    private void head(String... titles) throws IOException {
        sheet.row(row++);
        sheet.heads(0, List.of(titles), Looks.HEAD);
    }

    private void files() throws IOException {
        section("Files");
        head("Role", "File", "SHA-256");
        for (InputFile input : report.provenance().inputs()) {
            sheet.row(row++);
            sheet.text(0, input.role(), Looks.TEXT);
            sheet.text(1, input.name(), Looks.TEXT);
            sheet.text(2, input.sha256(), CODE);
        }
    }

    private void exclusions(Assay assay) throws IOException {
        section("Wells excluded");
        if (assay.exclusions().isEmpty()) {
            none();
            return;
        }
        Map<Run.Exclusion, List<Well>> byReason = new LinkedHashMap<>();
        assay.exclusions().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> byReason.computeIfAbsent(each.getValue(), key -> new java.util.ArrayList<>())
                        .add(each.getKey()));
        head("Wells", "Reason", "By");
        for (Map.Entry<Run.Exclusion, List<Well>> each : byReason.entrySet()) {
            decision(each.getValue(), each.getKey().by(), each.getKey().reason());
        }
    }

    private void choices(Assay assay) throws IOException {
        section("Finished part chosen by hand");
        if (assay.finishedFrom().isEmpty()) {
            none();
            return;
        }
        Map<Run.FinishedFrom, List<Well>> byReason = new LinkedHashMap<>();
        assay.finishedFrom().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> byReason.computeIfAbsent(each.getValue(), key -> new java.util.ArrayList<>())
                        .add(each.getKey()));
        head("Wells", "Reason", "By");
        for (Map.Entry<Run.FinishedFrom, List<Well>> each : byReason.entrySet()) {
            Run.FinishedFrom choice = each.getKey();
            decision(
                    each.getValue(),
                    choice.by(),
                    "from " + Numbers.plain(choice.timeS()) + " s after the trigger: " + choice.reason());
        }
    }

    private void decision(List<Well> wells, String by, String reason) throws IOException {
        String names = wells.stream()
                .sorted(Comparator.naturalOrder())
                .map(Well::toString)
                .collect(Collectors.joining(" "));
        sheet.row(row++, LINE_PT * ChecksSheet.lines(names, 24, reason, 50));
        sheet.text(0, names, Looks.WRAPPED);
        sheet.text(1, reason, Looks.WRAPPED);
        sheet.text(2, by, Looks.WRAPPED);
    }

    private void notices(List<Notice> notices) throws IOException {
        section("Notices");
        if (notices.isEmpty()) {
            none();
            return;
        }
        for (Notice notice : notices) {
            sheet.row(row++, LINE_PT * ChecksSheet.lines(notice.toString(), 136));
            sheet.banner(0, 2, notice.toString(), Looks.WRAPPED);
        }
    }

    private void none() throws IOException {
        sheet.row(row++);
        sheet.text(0, "none", Looks.NOTE);
    }

    private void note() throws IOException {
        row++;
        sheet.row(row++);
        sheet.text(
                0,
                "The SHA-256 sums show whether a file is the one that was read. They show accident, not intent.",
                Looks.NOTE);
    }
}
