package tallywell.desk;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.MakePlan;

/** Plans a run that is in a file; not for the event thread. */
public final class RunPlans {
    private final MakePlan planning = new MakePlan();

    /** The plan, to look at; nothing is written. */
    public PlanLook plan(Path run, Shown shown) throws InputException {
        return PlanLook.of(planning.plan(run), shown);
    }

    /** Writes the bench sheet, as a workbook and as a page to print, and the plan file beside the run, in place of earlier ones. */
    public MakePlan.Outcome write(Path run, Instant now, ZoneId zone) throws InputException, OutputException {
        return planning.run(new MakePlan.Request(
                run,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                true,
                now,
                zone,
                Optional.of(MakePlan.beside(run, "-bench.pdf")),
                false));
    }
}
