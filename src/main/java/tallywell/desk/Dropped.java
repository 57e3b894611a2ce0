package tallywell.desk;

import java.nio.file.Path;
import java.util.List;
import tallywell.method.AssayMethod;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.notice.Notice;
import tallywell.plate.Layout;
import tallywell.readings.Export;

/** What a file that was dropped turned out to be. */
public sealed interface Dropped {
    /** The file. */
    Path file();

    /** A method. */
    record OfMethod(Path file, AssayMethod method) implements Dropped {}

    /** A layout. */
    record OfLayout(Path file, Layout layout) implements Dropped {}

    /** A run. */
    record OfRun(Path file) implements Dropped {}

    /** A sample list. */
    record OfSamples(Path file, SampleList samples) implements Dropped {}

    /** A sample list for planning, whose samples have no numbers yet. */
    record OfWanted(Path file, List<WantedSample> samples) implements Dropped {
        /** Keeps a copy that cannot change. */
        public OfWanted {
            samples = List.copyOf(samples);
        }
    }

    /** Readings. */
    record OfReadings(Path file, Export export) implements Dropped {}

    /**
     * Nothing that can be used.
     *
     * @param why what was found, what would be right
     */
    record Refused(Path file, List<Notice> why) implements Dropped {
        /** Keeps a copy that cannot change. */
        public Refused {
            why = List.copyOf(why);
        }
    }
}
