package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.files.LayoutReader;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.quantity.Dilution;
import tallywell.report.SampleRuns;
import tallywell.workup.Assay;
import tallywell.workup.Workup;

/** The next plate: what is to be repeated, where, at which dilution. */
class RepeatsTest {
    @TempDir
    private Path folder;

    private static Assessment assessment(Assay assay) throws InputException {
        return new Assessor().assess(new Workup().analyse(assay));
    }

    private static List<String> rows(SampleList list) {
        return list.bySlot().values().stream()
                .map(each -> each.slot() + " " + each.label() + " " + each.dilution())
                .toList();
    }

    /** The same, where only the named results are to be repeated: {@code role word step}. */
    private static Assessment advising(Assessment of, Map<String, Advice> repeats) {
        return new Assessment(
                of.judgements().stream()
                        .map(each -> {
                            Advice advice = repeats.get(each.result().role() + " "
                                    + each.result().word() + " " + each.result().step());
                            return advice == null
                                    ? new Judgement(each.result(), Verdict.REPORT, new Advice.None(), Optional.empty())
                                    : new Judgement(each.result(), Verdict.REPEAT, advice, Optional.empty());
                        })
                        .toList(),
                of.checks(),
                of.observations(),
                of.budget(),
                of.differences());
    }

    private static Advice dilute(String dilution) {
        return new Advice.Dilute(Dilution.parse(dilution));
    }

    @Test
    void advisedDilutionsAreTakenAndTheSameAgainIsDoneAtTheDilutionThatItHad() throws InputException {
        Assessment assessment = assessment(SampleRuns.assay("cider-l-malic"));
        assertThat(rows(Repeats.of(assessment))).containsExactly("1 Tank 16 day 20 20", "2 Tank 23 day 34 1");
        assertThat(Repeats.isAny(assessment)).isTrue();
    }

    @Test
    void plateWhoseResultsCanStandLeavesNothing() throws InputException {
        Assessment assessment = assessment(SampleRuns.assay("puree-citric-solids"));
        assertThat(Repeats.of(assessment).bySlot()).isEmpty();
        assertThat(Repeats.isAny(assessment)).isFalse();
    }

    @Test
    void controlIsNoSampleToRepeat() throws InputException {
        Assessment all = assessment(SampleRuns.assay("cider-l-malic"));
        Assessment control = advising(all, Map.of("control q1 1", new Advice.Repeat()));
        assertThat(control.judgements()).anyMatch(each -> each.verdict() == Verdict.REPEAT);
        assertThat(Repeats.of(control).bySlot()).isEmpty();
    }

    @Test
    void analytesThatWantDifferentDilutionsHaveARowEach() throws InputException {
        Assessment all = assessment(SampleRuns.assay("juice-glucose-fructose"));
        String name =
                all.budget().analysis().assay().samples().in(3).orElseThrow().name();
        assertThat(rows(Repeats.of(advising(all, Map.of("sample 3 1", dilute("500"), "sample 3 2", dilute("20"))))))
                .containsExactly("1 " + name + " 20", "2 " + name + " 500");
        assertThat(rows(Repeats.of(advising(all, Map.of("sample 3 1", dilute("500"), "sample 3 2", dilute("1+499"))))))
                .containsExactly("1 " + name + " 500");
    }

    @Test
    void moreRowsThanSlotsAreRefused() throws InputException {
        Assessment all = assessment(SampleRuns.assay("juice-glucose-fructose"));
        Map<String, Advice> both = all.judgements().stream()
                .filter(each -> each.result().role().equals("sample"))
                .collect(Collectors.toMap(
                        each -> "sample " + each.result().word() + " "
                                + each.result().step(),
                        each -> dilute(each.result().step() == 1 ? "500" : "20")));
        assertThatThrownBy(() -> Repeats.of(advising(all, both)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(both.size() + " rows to repeat");
    }

    @Test
    void bothHalvesOfADifferenceAreRepeated() throws InputException {
        Assessment all = assessment(SampleRuns.assay("nectar-sucrose"));
        var samples = all.budget().analysis().assay().samples().bySlot();
        var free = samples.get(3);
        var total = samples.values().stream()
                .filter(each -> each.name().equals(free.name()) && each.slot() != free.slot())
                .findFirst()
                .orElseThrow();
        assertThat(rows(Repeats.of(advising(all, Map.of("sample " + total.slot() + " 1", dilute("500"))))))
                .containsExactly(
                        "1 " + free.name() + " (free) " + free.dilution(), "2 " + free.name() + " (total) 500");
    }

    /** Sample 16 has a sample blank, sample 20 a spike. */
    private Assay bound() throws InputException, IOException {
        Assay assay = SampleRuns.assay("cider-l-malic");
        Path file = folder.resolve("layout.yaml");
        String text = Files.readString(Path.of("plate-layouts/thirty-six-with-controls.yaml"));
        Files.writeString(
                file,
                text.replaceAll("(?m)^  q1: .*$", "  q1: {role: sample-blank, of: 16}")
                        .replaceAll("(?m)^  q2: .*$", "  q2: {role: spike, of: 20, added: 0.2 g/L}"));
        Layout layout = new LayoutReader().read(file);
        return assay.withLayout(layout);
    }

    @Test
    void samplesWithABlankOrASpikeOfTheirOwnKeepTheirSlot() throws InputException, IOException {
        Assessment all = assessment(bound());
        assertThat(rows(Repeats.of(
                        advising(all, Map.of("sample 5 1", new Advice.ReadLonger(), "sample 16 1", dilute("50"))))))
                .containsExactly("1 Tank 5 day 6 20", "16 Tank 16 day 20 50");
    }

    @Test
    void spikeToBeRepeatedBringsItsSample() throws InputException, IOException {
        Assessment all = assessment(bound());
        assertThat(rows(Repeats.of(advising(all, Map.of("spike q2 1", dilute("5"))))))
                .containsExactly("20 Tank 20 day 27 5");
    }
}
