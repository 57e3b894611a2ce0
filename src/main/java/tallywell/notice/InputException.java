package tallywell.notice;

import java.util.List;
import java.util.stream.Collectors;

/** Input of the user that cannot be worked up. Its notices say where, what was found and what would be right. */
public final class InputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Notice> notices;

    /** Stops the work with one notice. */
    public InputException(Notice notice) {
        this(List.of(notice));
    }

    /** Stops the work with an error at a place. */
    public InputException(Place place, String text) {
        this(Notice.error(place, text));
    }

    /** Stops the work with an error at a place, keeping what lies behind it for those who look for faults. */
    public InputException(Place place, String text, Throwable cause) {
        this(place, text);
        initCause(cause);
    }

    /**
     * Stops the work with several notices.
     *
     * @throws IllegalArgumentException unless there is at least one
     */
    public InputException(List<Notice> notices) {
        super(notices.stream().map(Notice::toString).collect(Collectors.joining("\n")));
        if (notices.isEmpty()) {
            throw new IllegalArgumentException("notices must not be empty");
        }
        this.notices = List.copyOf(notices);
    }

    /** What to tell the user, at least one. */
    public List<Notice> notices() {
        return notices;
    }
}
