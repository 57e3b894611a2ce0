package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.method.PlannedRun;
import tallywell.method.Treatment;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;

class PlanFileTest {
    @TempDir
    private Path folder = Path.of("");

    private Path file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return file;
    }

    @Test
    void whatIsWrittenIsReadBack() throws IOException, InputException {
        PlannedRun plan = new PlannedRun(
                "l-malic-340",
                "Plate \"A\", back\\slash: # half",
                42,
                List.of(
                        new PlannedRun.Slot(
                                1, "Cuvée №7, \"dry\" #2", new Dilution(12.5), OptionalDouble.of(50), Treatment.TOTAL),
                        new PlannedRun.Slot(2, "=1+1", Dilution.NONE, OptionalDouble.empty(), Treatment.NONE)),
                List.of(new PlannedRun.Prepared("q1", "dilution 1+4"), new PlannedRun.Prepared("a", "0.1 g/L")),
                List.of(new PlannedRun.StepPlan(
                        "L-malic acid: \"free\"",
                        OptionalDouble.of(20),
                        OptionalDouble.of(290),
                        OptionalDouble.of(600))));
        Path file = file("plan.yaml", new PlanFile().text(plan));
        assertThat(new PlanFile().read(file)).isEqualTo(plan);
    }

    @Test
    void aBrokenPlanIsNamed() throws IOException {
        Path file = file(
                "plan.yaml",
                "tallywell: plan/1\nmethod: a\nlayout: b\nwells: 2\nsamples:\n  - {slot: 1, sample: x, dilution: \"1:10\"}\n");
        assertThatThrownBy(() -> new PlanFile().read(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("plan.yaml, line 6")
                .hasMessageContaining("which laboratories read in two ways");
    }

    @Test
    void aListBeforeThePlanNeedsNoSlots() throws IOException, InputException {
        Path list = file("list.csv", "sample;expected;treatment;dilution\nTank 1;0,5-2 g/L;;\nTank 2;;total;1+9\n");
        List<WantedSample> wanted = new SampleListReader().readWanted(list);
        assertThat(wanted.get(0).hasSlot()).isFalse();
        assertThat(wanted.get(0).hasDilution()).isFalse();
        assertThat(wanted.get(0).expected()).isEqualTo("0.5-2 g/L");
        assertThat(wanted.get(1).sample().treatment()).isEqualTo(Treatment.TOTAL);
        assertThat(wanted.get(1).sample().dilution().factor()).isEqualTo(10);
        assertThatThrownBy(() -> new SampleListReader().read(list))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found no column 'slot'");
    }

    @Test
    void aTreatmentIsFreeOrTotal() throws IOException {
        Path list = file("list.csv", "slot,sample,treatment\n1,Tank 1,bound\n");
        assertThatThrownBy(() -> new SampleListReader().read(list))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("list.csv, line 2")
                .hasMessageContaining("found the treatment 'bound'; expected free, total, or nothing");
    }
}
