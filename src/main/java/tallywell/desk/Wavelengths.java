package tallywell.desk;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.quantity.Numbers;

/** Whether the readings of a run were taken at the wavelength of its method. */
final class Wavelengths {
    /** Two wavelengths that differ by no more are the same, as for the importer. */
    private static final double SAME_NM = 0.5;

    private Wavelengths() {}

    /** The exports that state another wavelength than the method asks for, where nobody has said that this is right. */
    static List<Intake> wrong(RunDraft draft) {
        OptionalDouble asked = draft.method()
                .map(each -> each.value().steps().get(0).signal().wavelengthNm())
                .orElse(OptionalDouble.empty());
        if (asked.isEmpty()) {
            return List.of();
        }
        return draft.readings().stream()
                .filter(each -> each.block().wavelengthNm().isPresent())
                .filter(each -> !isSame(each.block().wavelengthNm(), asked.getAsDouble()))
                .filter(each -> each.choice().wavelengthNm().isEmpty())
                .toList();
    }

    static boolean isSame(OptionalDouble stated, double nm) {
        return stated.isPresent() && Math.abs(stated.getAsDouble() - nm) <= SAME_NM;
    }

    /** Why such readings are not worked up. */
    static Notice problem(Intake intake, RunDraft draft) {
        double asked = draft.method()
                .orElseThrow()
                .value()
                .steps()
                .get(0)
                .signal()
                .wavelengthNm()
                .orElseThrow();
        return Notice.error(
                Place.file(intake.file()),
                "found readings at "
                        + Numbers.plain(intake.block().wavelengthNm().orElseThrow()) + " nm; expected "
                        + Numbers.plain(asked) + " nm, the wavelength of the method");
    }
}
