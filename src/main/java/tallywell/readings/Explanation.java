package tallywell.readings;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import tallywell.notice.Notice;

/**
 * What the importer understood of a file: how it is written, what blocks of readings it holds, what was left out and
 * why.
 */
public final class Explanation {
    private final Path file;
    private final String written;
    private final List<String> blocks;
    private final List<Notice> notices;

    Explanation(Path file, String written, List<String> blocks, List<Notice> notices) {
        this.file = file;
        this.written = written;
        this.blocks = List.copyOf(blocks);
        this.notices = List.copyOf(notices);
    }

    /** The file. */
    public Path file() {
        return file;
    }

    /** Encoding, delimiter and decimal mark in one line. */
    public String written() {
        return written;
    }

    /** One line for each block. */
    public List<String> blocks() {
        return blocks;
    }

    /** What was left out, and what was taken on less than certain grounds, each with its place. */
    public List<Notice> notices() {
        return notices;
    }

    /** All of it as lines for a person, without a line end behind the last one. */
    public String text() {
        StringBuilder text = new StringBuilder(file.toString());
        text.append("\n  ").append(written);
        blocks.forEach(block -> text.append("\n  ").append(block));
        text.append(notices.stream()
                .map(notice -> "\n  " + where(notice) + notice.text())
                .collect(Collectors.joining()));
        return text.toString();
    }

    /** The place within the file, whose name stands above already. */
    private String where(Notice notice) {
        String place = notice.place().text();
        String name = file.toString();
        String within = place.startsWith(name) ? place.substring(name.length()).replaceFirst("^, ", "") : place;
        return within.isEmpty() ? "" : within + ": ";
    }

    @Override
    public String toString() {
        return text();
    }
}
