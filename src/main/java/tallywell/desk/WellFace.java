package tallywell.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.chart.SmallTrace;

/**
 * What a well shows.
 *
 * @param shape how it is drawn
 * @param label first line; may be empty
 * @param value second line; may be empty
 * @param scaled where it stands on the colour scale; empty for none
 * @param badges signs to look at
 * @param excluded whether it is struck through
 * @param trace to draw instead of text
 * @param words everything that the well has to say, for tool tips and screen readers
 */
public record WellFace(
        Shape shape,
        String label,
        String value,
        OptionalDouble scaled,
        List<Badge> badges,
        boolean excluded,
        Optional<SmallTrace> trace,
        String words) {
    /** Keeps copies that cannot change. */
    public WellFace {
        badges = List.copyOf(badges);
    }

    /** How a role is drawn: told apart without colour. */
    public enum Shape {
        /** Outline only. */
        BLANK,
        /** Outline with dashes: a blank without trigger. */
        BLANK_UNTRIGGERED,
        /** Double edge. */
        STANDARD,
        /** Standing on its corner. */
        CONTROL,
        /** Filled. */
        SAMPLE,
        /** Outline with a stroke. */
        SAMPLE_BLANK,
        /** Filled, with a plus. */
        SPIKE,
        /** A dot. */
        UNUSED;

        /** The shape that stands for the whole role: both kinds of blanks are blanks. */
        public Shape ofRole() {
            return this == BLANK_UNTRIGGERED ? BLANK : this;
        }
    }

    /** A sign on a well. */
    public enum Badge {
        /** Excluded by a person. */
        EXCLUDED("×", "excluded"),
        /** Above what can be measured. */
        HIGH("▲", "too high"),
        /** Below what can be measured. */
        LOW("▼", "too low"),
        /** The reaction goes on. */
        RISING("…", "not finished"),
        /** Replicates differ. */
        DIFFER("≠", "replicates differ"),
        /** The trace wants a look. */
        TRACE("~", "look at the trace"),
        /** Readings are missing. */
        MISSING("?", "readings missing"),
        /** Recovery out of its limits. */
        RECOVERY("%", "recovery out"),
        /** A person chose the finished part. */
        BY_HAND("✎", "set by hand"),
        /** Something else to look at. */
        LOOK("!", "look");

        private final String sign;
        private final String text;

        Badge(String sign, String text) {
            this.sign = sign;
            this.text = text;
        }

        /** One character. */
        public String sign() {
            return sign;
        }

        /** The sign in words. */
        public String text() {
            return text;
        }
    }

    /** A face without value and badges. */
    static WellFace plain(Shape shape, String label, String value, String words) {
        return new WellFace(shape, label, value, OptionalDouble.empty(), List.of(), false, Optional.empty(), words);
    }
}
