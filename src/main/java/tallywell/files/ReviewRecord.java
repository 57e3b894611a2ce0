package tallywell.files;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tallywell.method.Worded;

/**
 * Who checked and who approved a report, as the file beside it keeps it.
 *
 * @param report name of the report's file
 * @param entries in the order in which they were made
 */
public record ReviewRecord(String report, List<Entry> entries) {
    /** Keeps a copy that cannot change. */
    public ReviewRecord {
        entries = List.copyOf(entries);
    }

    /** What a person did. */
    public enum Step implements Worded {
        /** A second person went through it. */
        CHECKED("checked"),
        /** It was released. */
        APPROVED("approved");

        private final String word;

        Step(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    /**
     * One step of the review.
     *
     * @param step what was done
     * @param by who did it
     * @param at when
     * @param sha256 hash of the report at that time
     * @param reason why it was done although a batch failed its acceptance; empty if none did
     */
    public record Entry(Step step, String by, Instant at, String sha256, String reason) {
        /** An entry that needs no reason. */
        public Entry(Step step, String by, Instant at, String sha256) {
            this(step, by, at, sha256, "");
        }

        /** Whether a name is that of the same person, however it is spelt. */
        public boolean isBy(String name) {
            return PersonName.skeleton(by).equals(PersonName.skeleton(name));
        }
    }

    /** The entries that are of these bytes. */
    public List<Entry> of(String sha256) {
        return entries.stream().filter(each -> each.sha256().equals(sha256)).toList();
    }

    /** The check of these bytes that another person than this one made, if there is one. */
    public Optional<Entry> checkedByAnother(String sha256, String name) {
        return of(sha256).stream()
                .filter(each -> each.step() == Step.CHECKED && !each.isBy(name))
                .findFirst();
    }

    /** What these bytes are: approved where a second person had checked them before, else checked, else neither. */
    public Optional<Step> state(String sha256) {
        boolean approved = of(sha256).stream()
                .anyMatch(each -> each.step() == Step.APPROVED
                        && checkedByAnother(sha256, each.by())
                                .filter(check -> !check.at().isAfter(each.at()))
                                .isPresent());
        if (approved) {
            return Optional.of(Step.APPROVED);
        }
        return of(sha256).stream().anyMatch(each -> each.step() == Step.CHECKED)
                ? Optional.of(Step.CHECKED)
                : Optional.empty();
    }
}
