package tallywell.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Run;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.workup.PlateIdentity;
import tallywell.workup.Taken;

/**
 * One export that belongs to a run.
 *
 * @param file the export
 * @param choice which of its blocks, where it has several
 * @param block the readings
 * @param explanation what was understood of the file, in lines
 * @param triggerBefore whether a trigger was added just before
 * @param triggerAtS moments of the triggers inside the series in s of its own time, ascending
 * @param timeS time of the (first) reading from the trigger in s, if said
 * @param samePlate why it is the plate of the run although something speaks against it, if said
 */
public record Intake(
        Path file,
        Choice choice,
        Block block,
        String explanation,
        boolean triggerBefore,
        List<Double> triggerAtS,
        OptionalDouble timeS,
        Optional<String> samePlate) {
    /** Keeps a copy that cannot change. */
    public Intake {
        triggerAtS = List.copyOf(triggerAtS);
    }

    /** The file's name without its folders. */
    public String name() {
        return String.valueOf(file.getFileName());
    }

    /** The same after a trigger, or not. */
    Intake after(boolean trigger) {
        return new Intake(file, choice, block, explanation, trigger, triggerAtS, timeS, samePlate);
    }

    /** The same with triggers inside. */
    Intake withTriggersAt(List<Double> timesS) {
        return new Intake(file, choice, block, explanation, triggerBefore, timesS, timeS, samePlate);
    }

    /** Another block of the same file, or the same one by another choice. */
    Intake with(Choice other, Block chosen) {
        return new Intake(file, other, chosen, explanation, triggerBefore, triggerAtS, timeS, samePlate);
    }

    /** The same under another path. */
    Intake at(Path other) {
        return new Intake(other, choice, block, explanation, triggerBefore, triggerAtS, timeS, samePlate);
    }

    Taken taken() {
        return new Taken(
                name(),
                triggerBefore,
                triggerAtS,
                timeS,
                block.series(),
                new PlateIdentity(block.plate(), block.readAt(), samePlate));
    }

    Run.Reading reading(String typed) {
        return new Run.Reading(
                typed,
                triggerBefore,
                triggerAtS,
                choice.plate(),
                choice.block(),
                choice.wavelengthNm(),
                timeS,
                0,
                samePlate);
    }

    /** Mean of all readings that are numbers; empty if none is. */
    public OptionalDouble mean() {
        return Readings.mean(block.series());
    }
}
