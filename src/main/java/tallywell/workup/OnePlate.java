package tallywell.workup;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tallywell.notice.Notice;

/**
 * Whether the exports of a run can be of one plate and in the order in which the run has them: names of plates that differ,
 * and dates and times that run backwards or lie days apart, contradict that. A person can say why it is so all the same.
 */
final class OnePlate {
    /** No end point takes longer from one reading to the next (common practice, no source). */
    private static final Duration LONGEST = Duration.ofHours(24);

    private static final DateTimeFormatter WRITTEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    private OnePlate() {}

    /** What contradicts, as messages that say what would be right; none where a person has said why. */
    static List<String> faults(List<Taken> readings) {
        List<String> faults = new ArrayList<>();
        for (int i = 1; i < readings.size(); i++) {
            if (readings.get(i).identity().samePlate().isEmpty()) {
                contradiction(readings, i)
                        .ifPresent(found -> faults.add(found
                                + "; if they are right, say why with 'same-plate: \"...\"' at that reading in the run"
                                + " file"));
            }
        }
        return faults;
    }

    /** What a person has accepted, with the reason. */
    static List<Notice> accepted(Assay assay) {
        List<Notice> accepted = new ArrayList<>();
        for (int i = 1; i < assay.readings().size(); i++) {
            Optional<String> reason = assay.readings().get(i).identity().samePlate();
            Optional<String> found = contradiction(assay.readings(), i);
            if (reason.isPresent() && found.isPresent()) {
                accepted.add(Notice.attention(
                        assay.place(), found.get() + "; accepted with 'same-plate': \"" + reason.get() + "\""));
            }
        }
        return accepted;
    }

    /** What speaks against a reading, compared with those before it; readings that were accepted are not compared with. */
    private static Optional<String> contradiction(List<Taken> readings, int index) {
        Taken each = readings.get(index);
        List<Taken> earlier = readings.subList(0, index).stream()
                .filter(other -> other.identity().samePlate().isEmpty())
                .toList();
        Optional<Taken> named = earlier.stream()
                .filter(other -> !other.identity().plate().isBlank())
                .findFirst();
        if (named.isPresent()
                && differ(named.get().identity().plate(), each.identity().plate())) {
            return Optional.of("found the plate '" + named.get().identity().plate() + "' in "
                    + named.get().name() + " and the plate '" + each.identity().plate() + "' in " + each.name()
                    + "; expected all readings of one run from one plate");
        }
        Optional<Taken> dated = earlier.stream()
                .filter(other -> other.identity().readAt().isPresent())
                .reduce((first, second) -> second);
        return dated.isEmpty() || each.identity().readAt().isEmpty() ? Optional.empty() : times(dated.get(), each);
    }

    private static boolean differ(String one, String other) {
        return !other.isBlank() && !one.strip().equalsIgnoreCase(other.strip());
    }

    private static Optional<String> times(Taken one, Taken other) {
        LocalDateTime first = one.identity().readAt().orElseThrow();
        LocalDateTime second = other.identity().readAt().orElseThrow();
        boolean backwards = second.isBefore(first);
        if (!backwards && Duration.between(first, second).compareTo(LONGEST) <= 0) {
            return Optional.empty();
        }
        String found = "found " + one.name() + " read at " + first.format(WRITTEN) + " and " + other.name()
                + ", which the run has after it, read at " + second.format(WRITTEN);
        return Optional.of(
                backwards
                        ? found + "; expected the readings in the order they were taken"
                        : found + ", more than " + LONGEST.toHours()
                                + " h later; expected all readings of one run from one plate");
    }
}
