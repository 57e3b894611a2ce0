package tallywell.assess;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Analysis;
import tallywell.workup.Assay;
import tallywell.workup.PlatePattern;
import tallywell.workup.Taken;
import tallywell.workup.WellResult;

/** Whether the pattern of the wells in each reading of a run comes back in the next one. */
final class PatternReadings {
    private static final int DIGITS = 2;
    private static final double MILLI = 1000;
    private static final double LARGEST_POWER = 9;
    private static final String SOURCE = "likelihood of the scatter within replicates";

    private final List<Compared> all;

    /** A reading and what the one before it says of it; nothing where too few wells have one content. */
    private record Compared(String before, Taken after, Optional<PlatePattern> pattern) {
        boolean isWrong() {
            return pattern.map(each -> each.finding().isWrong()).orElse(false);
        }
    }

    private PatternReadings(List<Compared> all) {
        this.all = all;
    }

    /** Compares each reading with the one before it that nobody had to vouch for. */
    static PatternReadings of(Analysis analysis) {
        Assay assay = analysis.assay();
        Set<Well> used = new HashSet<>();
        for (WellResult well : analysis.steps().get(0).where(WellResult::used)) {
            used.add(well.well());
        }
        List<Compared> all = new ArrayList<>();
        Taken before = assay.readings().get(0);
        for (Taken after : assay.readings().subList(1, assay.readings().size())) {
            all.add(new Compared(
                    before.name(),
                    after,
                    PlatePattern.of(assay.layout(), used::contains, before.series(), after.series())));
            before = after.identity().samePlate().isEmpty() ? after : before;
        }
        return new PatternReadings(all);
    }

    /** Whether a reading does not look like the plate of the run, and no person says that it is. */
    boolean isOtherPlate() {
        return all.stream()
                .anyMatch(each ->
                        each.isWrong() && each.after().identity().samePlate().isEmpty());
    }

    List<Check> checks() {
        return all.stream().map(PatternReadings::check).toList();
    }

    private static Check check(Compared each) {
        String name = "pattern of the wells of " + each.before() + " in "
                + each.after().name();
        if (each.pattern().isEmpty()) {
            return Observations.open(name, "too few replicates in both to tell", SOURCE);
        }
        PlatePattern pattern = each.pattern().get();
        Optional<String> accepted = each.after().identity().samePlate();
        String found = found(pattern);
        Check.State state = switch (pattern.finding()) {
            case ONE_PLATE -> Check.State.PASSED;
            case OPEN -> Check.State.NOT_ASSESSED;
            case OTHER_PLATE, TURNED -> Check.State.FAILED;
        };
        if (state == Check.State.FAILED && accepted.isPresent()) {
            found += "; accepted with 'same-plate': \"" + accepted.get() + "\"";
            state = Check.State.NOT_ASSESSED;
        }
        return new Check(name, "another plate not 20 times as likely", found, state, SOURCE);
    }

    private static String found(PlatePattern pattern) {
        String wells = " (wells differ by " + milli(pattern.scatter().wells()) + " mA, a reading by up to "
                + milli(pattern.noise()) + " mA)";
        return switch (pattern.finding()) {
            case ONE_PLATE -> "it comes back, " + times(pattern.scatter().ratio()) + " as likely as not" + wells;
            case OPEN -> "nothing tells one plate from another" + wells;
            case OTHER_PLATE ->
                "it does not come back: another plate is "
                        + times(-pattern.scatter().ratio()) + " as likely" + wells;
            case TURNED -> "it comes back with the later plate turned by 180 degrees" + wells;
        };
    }

    private static String times(double log) {
        double power = log / Math.log(10);
        return power < LARGEST_POWER ? Numbers.rounded(Math.exp(log), DIGITS) + " times" : "over 1,000,000,000 times";
    }

    private static String milli(double absorbance) {
        return Numbers.rounded(MILLI * absorbance, DIGITS);
    }
}
