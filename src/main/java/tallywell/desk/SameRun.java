package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Whether two runs say the same, wherever in their files it stands. */
public final class SameRun {
    private SameRun() {}

    /** Whether two runs have the same words, method, layout, samples, readings and decisions. */
    public static boolean says(RunDraft one, RunDraft other) {
        return words(one).equals(words(other)) && readings(one.readings(), other.readings());
    }

    private static List<Object> words(RunDraft run) {
        List<Object> words = new ArrayList<>();
        words.add(run.title());
        words.add(run.operator());
        words.add(run.method().map(Origin::value));
        words.add(run.layout().map(Origin::value));
        words.add(run.sampleList().bySlot());
        words.add(run.file().map(SameRun::plain));
        run.exclusions().forEach(each -> words.add(List.of(each.wells(), each.reason(), each.by())));
        run.finishedFrom().forEach(each -> words.add(List.of(each.wells(), each.timeS(), each.reason(), each.by())));
        return words;
    }

    private static Path plain(Path file) {
        return file.toAbsolutePath().normalize();
    }

    private static boolean readings(List<Intake> one, List<Intake> other) {
        if (one.size() != other.size()) {
            return false;
        }
        for (int i = 0; i < one.size(); i++) {
            Intake mine = one.get(i);
            Intake theirs = other.get(i);
            boolean same = mine.choice().equals(theirs.choice())
                    && mine.triggerBefore() == theirs.triggerBefore()
                    && mine.triggerAtS().equals(theirs.triggerAtS())
                    && mine.timeS().equals(theirs.timeS())
                    && Readings.same(mine.block().series(), theirs.block().series());
            if (!same) {
                return false;
            }
        }
        return true;
    }
}
