package tallywell.method;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.plate.Well;

/**
 * One plate: what was read, and what belongs to it. File names are as typed, relative to the run file.
 *
 * @param title as reports print it, or empty
 * @param method id of a built-in method, or the path of a method file
 * @param layout path of a layout file
 * @param samples path of a sample list, if there is one
 * @param operator who did the work, or empty
 * @param readings in the order they were taken; none before the run is done
 * @param exclusions wells that do not count
 * @param finishedFrom the analyst's own choices of the finished part
 * @param plan path of the plan that the run followed, if it names one
 * @param planning how it is planned
 * @param pathReading where the light path of each well is measured, if it is
 */
public record Run(
        String title,
        String method,
        String layout,
        Optional<String> samples,
        String operator,
        List<Reading> readings,
        List<Exclusion> exclusions,
        List<FinishedFrom> finishedFrom,
        Optional<String> plan,
        Planning planning,
        Optional<PathReading> pathReading) {
    /** A run whose light paths are not measured. */
    public Run(
            String title,
            String method,
            String layout,
            Optional<String> samples,
            String operator,
            List<Reading> readings,
            List<Exclusion> exclusions,
            List<FinishedFrom> finishedFrom,
            Optional<String> plan,
            Planning planning) {
        this(
                title,
                method,
                layout,
                samples,
                operator,
                readings,
                exclusions,
                finishedFrom,
                plan,
                planning,
                Optional.empty());
    }

    /** A run that follows no plan. */
    public Run(
            String title,
            String method,
            String layout,
            Optional<String> samples,
            String operator,
            List<Reading> readings,
            List<Exclusion> exclusions,
            List<FinishedFrom> finishedFrom) {
        this(
                title,
                method,
                layout,
                samples,
                operator,
                readings,
                exclusions,
                finishedFrom,
                Optional.empty(),
                Planning.USUAL);
    }

    /** Keeps copies that cannot change. */
    public Run {
        readings = List.copyOf(readings);
        exclusions = List.copyOf(exclusions);
        finishedFrom = List.copyOf(finishedFrom);
    }

    /**
     * One export, or a part of it.
     *
     * @param file path as typed
     * @param triggerBefore whether a trigger was added just before
     * @param triggerAtS moments of the triggers inside the series, in s of the file's own time, ascending; else empty
     * @param plate which plate of a file with several
     * @param block which block of a file with several
     * @param wavelengthNm which wavelength of a file with several, in nm
     * @param timeS time of the (first) reading from the trigger, in s
     * @param line line of the run file, for messages; 0 if it came from the command line
     * @param samePlate why it is the plate of the run although name, date or order speak against it, if said
     */
    public record Reading(
            String file,
            boolean triggerBefore,
            List<Double> triggerAtS,
            Optional<String> plate,
            OptionalInt block,
            OptionalDouble wavelengthNm,
            OptionalDouble timeS,
            int line,
            Optional<String> samePlate) {
        /** A reading of which nothing is said that its export contradicts. */
        public Reading(
                String file,
                boolean triggerBefore,
                List<Double> triggerAtS,
                Optional<String> plate,
                OptionalInt block,
                OptionalDouble wavelengthNm,
                OptionalDouble timeS,
                int line) {
            this(file, triggerBefore, triggerAtS, plate, block, wavelengthNm, timeS, line, Optional.empty());
        }

        /** Keeps a copy that cannot change. */
        public Reading {
            triggerAtS = List.copyOf(triggerAtS);
        }

        /** A whole file, as the command line names it. */
        public static Reading of(String file, boolean triggerBefore, List<Double> triggerAtS) {
            return new Reading(
                    file,
                    triggerBefore,
                    triggerAtS,
                    Optional.empty(),
                    OptionalInt.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    0);
        }
    }

    /**
     * Wells that do not count.
     *
     * @param wells which
     * @param reason why
     * @param by who says so
     * @param line line of the run file, for messages
     */
    public record Exclusion(List<Well> wells, String reason, String by, int line) {
        /** Keeps a copy that cannot change. */
        public Exclusion {
            wells = List.copyOf(wells);
        }

        /** The exclusion of each well: the first one that names it. */
        public static Map<Well, Exclusion> byWell(List<Exclusion> exclusions) {
            Map<Well, Exclusion> wells = new HashMap<>();
            exclusions.forEach(each -> each.wells().forEach(well -> wells.putIfAbsent(well, each)));
            return wells;
        }
    }

    /**
     * The analyst's own choice of the finished part.
     *
     * @param wells which
     * @param timeS start of the finished part from the trigger of the well, in s
     * @param reason why
     * @param by who says so
     * @param line line of the run file, for messages
     */
    public record FinishedFrom(List<Well> wells, double timeS, String reason, String by, int line) {
        /** Keeps a copy that cannot change. */
        public FinishedFrom {
            wells = List.copyOf(wells);
        }
    }
}
