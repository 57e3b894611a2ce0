package tallywell.gui;

import java.awt.Dimension;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.TransferHandler;
import net.miginfocom.swing.MigLayout;
import tallywell.assess.Assessment;
import tallywell.assess.BasisWords;
import tallywell.assess.Verdict;
import tallywell.desk.ResultRow;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.Shown;
import tallywell.desk.Sum;
import tallywell.desk.Worked;
import tallywell.notice.Notice;

/** The results of a run under one sentence about the batch. */
final class ResultsCard extends Card {
    private static final int MOST_PROBLEMS = 4;

    private static final int BETWEEN = 6;
    private static final double WIDE_TEXT = 40;
    private static final double HIGH_TEXT = 12;

    private final RunDesk desk;
    private final Shown shown;
    private final ResultsTable table;
    private final JLabel sign = new JLabel(Glyph.missing(20));
    private final JTextArea sentence = Labels.wrappedStrong("");
    private final JCheckBox attention = new JCheckBox();
    private final JButton checks = Fields.button("", this::showChecks);
    private final JButton repeats;
    private final JPanel offers = new WrapRow(BETWEEN);

    ResultsCard(RunDesk desk, Shown shown, TransferHandler drop, Runnable repeat) {
        super(new MigLayout("insets 8 12 6 12, fill, gapy 4, hidemode 3", "[][grow, fill][]", "[][grow, fill]"));
        this.desk = desk;
        this.shown = shown;
        table = new ResultsTable(desk.selection());
        table.setTransferHandler(drop);
        sentence.setName("sentence");
        add(sign);
        add(sentence, "w 200:200:");
        // In large text they go below each other rather than out of the window.
        attention.setName("attention");
        attention.setOpaque(false);
        attention.addActionListener(event -> table.showOnlyAttention(attention.isSelected()));
        offers.add(attention);
        repeats = Fields.button(Text.of("repeats.button"), repeat);
        repeats.setName("repeats");
        offers.add(repeats);
        checks.setName("checks");
        offers.add(checks);
        add(offers, "wmin 150");
        JScrollPane pane = new JScrollPane(table);
        pane.setBorder(BorderFactory.createEmptyBorder());
        add(pane, "newline, span 3, grow, hmin 60");
    }

    void refresh() {
        Worked worked = desk.worked();
        Optional<Assessment> assessment = worked.assessment();
        List<ResultRow> rows = worked.analysis().isPresent() && assessment.isPresent()
                ? ResultRow.of(worked.analysis().get(), assessment.get(), shown)
                : List.of();
        Optional<BasisWords> basis = assessment.map(BasisWords::new);
        table.show(
                rows, heading(desk.draft()), basis.map(BasisWords::scatterOnly).orElse(false));
        offers.setVisible(assessment.isPresent());
        repeats.setVisible(worked.hasRepeats());
        attention.setText(Text.of(
                "results.attention",
                rows.stream().filter(ResultRow::needsAttention).count()));
        if (assessment.isPresent()) {
            assessed(assessment.get());
        } else if (!worked.problems().isEmpty() && worked.draft().equals(desk.draft())) {
            sign.setIcon(Glyph.look(20));
            sentence.setText(String.join(
                    "\n",
                    worked.problems().stream()
                            .map(Notice::text)
                            .limit(MOST_PROBLEMS)
                            .toList()));
        } else {
            sign.setIcon(Glyph.missing(20));
            sentence.setText(desk.isBusy() ? Text.of("run.busy") : needs(desk.draft()));
        }
    }

    private static String heading(RunDraft draft) {
        return draft.method()
                .map(each -> each.value().steps().size() == 1
                                && each.value().differences().isEmpty()
                        ? each.value().steps().get(0).analyte().name()
                        : Text.of("results.value"))
                .orElse(Text.of("results.value"));
    }

    private void assessed(Assessment assessment) {
        sign.setIcon(
                assessment.isMostlyAssessed()
                        ? Glyph.good(20)
                        : assessment.passed() ? Glyph.missing(20) : Glyph.look(20));
        String verdicts = Text.of(
                "run.verdicts",
                assessment.count(Verdict.REPORT),
                assessment.count(Verdict.CHECK),
                assessment.count(Verdict.REPEAT));
        String undiluted = desk.draft().samples().isEmpty() ? " " + Text.of("run.undiluted") : "";
        sentence.setText(assessment.sentence() + " " + verdicts + undiluted + new BasisWords(assessment).sentence());
        checks.setText(Text.of("checks.button"));
    }

    /** What a run still needs, in words; empty if nothing. */
    static String needs(RunDraft draft) {
        List<RunDraft.Need> needs = draft.needs();
        return needs.isEmpty() ? "" : Text.of("need." + needs.get(0)) + " " + Text.of("need.drop");
    }

    private void showChecks() {
        desk.worked().assessment().ifPresent(assessment -> ChecksDialog.show(this, assessment));
    }

    /** The sum behind the selected result, step by step. */
    void showSum() {
        Optional<ResultRow> row = table.selected();
        if (row.isPresent() && desk.worked().analysis().isPresent()) {
            List<String> lines = Sum.of(desk.worked(), row.get().result(), shown);
            TextDialog.show(this, Text.of("sum.title"), String.join("\n", lines));
        }
    }

    ResultsTable table() {
        return table;
    }

    String sentence() {
        return sentence.getText();
    }

    @Override
    public Dimension getMinimumSize() {
        return inText(WIDE_TEXT, HIGH_TEXT);
    }
}
