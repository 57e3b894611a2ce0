package tallywell.desk;

import java.nio.file.Path;
import java.util.Optional;
import tallywell.method.Planning;

/**
 * What a run says about its planning.
 *
 * @param plan the plan that it followed, if it names one
 * @param planning how the laboratory plans; its {@code earlier} is as typed
 * @param earlier where the results of an earlier run are, if it names some
 */
public record Bench(Optional<Path> plan, Planning planning, Optional<Path> earlier) {
    /** A run that says nothing about it. */
    public static final Bench NONE = new Bench(Optional.empty(), Planning.USUAL, Optional.empty());

    /** How another run is planned in the same laboratory. */
    Bench ofAnotherRun() {
        return new Bench(Optional.empty(), withEarlier(Optional.empty()), Optional.empty());
    }

    /** How the run is planned, with the results of an earlier run under another name. */
    Planning withEarlier(Optional<String> typed) {
        return new Planning(
                planning.series(),
                planning.overage(),
                planning.pipetteLeastUl(),
                planning.diluteToUl(),
                planning.stocks(),
                planning.stockMl(),
                planning.wellMostUl(),
                typed);
    }
}
