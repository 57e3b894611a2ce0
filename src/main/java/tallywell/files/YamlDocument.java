package tallywell.files;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/**
 * One of our YAML files as a tree of nodes that know their line. The subset leaves out what lets the same text mean
 * two things or hides work: anchors, tags, second documents, tabs as indentation.
 */
final class YamlDocument {
    private static final Pattern TAB_INDENT = Pattern.compile(" *\t\\s*\\S.*");
    private static final Pattern COLON_IN_TEXT = Pattern.compile("\\s*[^'\"#\\[{][^'\"#\\[{]*: .*: .*");
    private static final int DEEPEST = 20;

    private final Path path;
    private final List<String> lines;
    private final String text;

    private YamlDocument(Path path, String text) {
        this.path = path;
        this.text = text;
        this.lines = text.lines().toList();
    }

    /**
     * Reads a file and checks its first key.
     *
     * @param path the file
     * @param kind what {@code tallywell:} must say, such as {@code layout/1}
     * @return the mapping at the top
     */
    static YamlMapping read(Path path, String kind, String... keys) throws InputException {
        return parse(path, TextFile.read(path), kind, keys);
    }

    /** The same from a text that was read already; the path only serves messages. */
    static YamlMapping parse(Path path, String text, String kind, String... keys) throws InputException {
        YamlDocument document = new YamlDocument(path, text);
        document.refuseOtherFiles(kind);
        YamlNode root = document.root(kind);
        YamlMapping top = root.mapping("what the first line 'tallywell: " + kind + "' begins");
        YamlNode marker = top.find("tallywell")
                .orElseThrow(
                        () -> root.wrong("found no line 'tallywell: " + kind + "'; expected it as the first line"));
        String found = marker.text();
        if (!found.equals(kind)) {
            throw marker.wrong("found 'tallywell: " + found + "'; expected 'tallywell: " + kind + "' here");
        }
        top.only(keys);
        return top;
    }

    /** A file that is not one of ours at all gets a message about that, not about its structure. */
    private void refuseOtherFiles(String kind) throws InputException {
        boolean blank = text.isBlank();
        boolean ours = lines.stream().anyMatch(line -> line.startsWith("tallywell"));
        if (!blank && !ours) {
            throw new InputException(
                    Place.file(path),
                    "found no line 'tallywell: " + kind + "'; expected a file that begins with it"
                            + (kind.startsWith("run/")
                                    ? " (for exports without a run file, give --method and --layout)"
                                    : ""));
        }
    }

    private YamlNode root(String kind) throws InputException {
        refuseTabs();
        LoadSettings settings = LoadSettings.builder()
                .setLabel(path.toString())
                .setAllowDuplicateKeys(true)
                .build();
        try {
            refuseWhatIsOutsideTheSubset(settings);
            Optional<Node> node = new Compose(settings).composeString(text);
            if (node.isEmpty()) {
                throw new InputException(
                        Place.file(path),
                        "found nothing in the file; expected 'tallywell: " + kind + "' and what follows");
            }
            return new YamlNode(path, lines, node.get());
        } catch (MarkedYamlEngineException e) {
            throw broken(e);
        } catch (YamlEngineException e) {
            throw new InputException(
                    Place.file(path), "found characters or nesting that YAML does not allow; check the file", e);
        }
    }

    private void refuseTabs() throws InputException {
        for (int i = 0; i < lines.size(); i++) {
            if (TAB_INDENT.matcher(lines.get(i)).matches()) {
                throw new InputException(
                        Place.line(path, i + 1), "found a tab as indentation; expected blanks, such as two a level");
            }
        }
    }

    private void refuseWhatIsOutsideTheSubset(LoadSettings settings) throws InputException {
        int documents = 0;
        int depth = 0;
        for (Event event : new Parse(settings).parseString(text)) {
            if (event instanceof DocumentStartEvent && ++documents > 1) {
                throw at(event, "found a second document ('---'); expected one document a file");
            }
            if (event instanceof AliasEvent alias) {
                throw at(event, "found the alias '*" + alias.getAlias() + "'; write the value out, or quote the text");
            }
            if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
                throw at(event, "found the anchor '&" + node.getAnchor().get() + "'; leave it out, or quote the text");
            }
            if (event instanceof ScalarEvent scalar && scalar.getTag().isPresent()
                    || event instanceof CollectionStartEvent start
                            && start.getTag().isPresent()) {
                throw at(event, "found a tag ('!'); leave it out, or quote the text");
            }
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                throw at(event, "found brackets or lists nested over " + DEEPEST + " deep; expected a few levels");
            }
            if (event.getEventId() == Event.ID.MappingEnd || event.getEventId() == Event.ID.SequenceEnd) {
                depth--;
            }
        }
    }

    private InputException at(Event event, String message) {
        int line = event.getStartMark().map(Mark::getLine).orElse(0) + 1;
        return new InputException(Place.line(path, line), message);
    }

    /** The library's words are for programmers; ours name what a person most likely typed. */
    private InputException broken(MarkedYamlEngineException e) {
        int line = e.getProblemMark().map(Mark::getLine).orElse(0);
        int from = e.getContextMark().map(Mark::getLine).orElse(line);
        String here = line < lines.size() ? lines.get(line).strip() : "the end of the file";
        String problem = String.valueOf(e.getProblem());
        String hint;
        int shown = line;
        int open = firstUnpairedQuote();
        if (here.startsWith("%") || here.startsWith("@") || here.startsWith("`")) {
            hint = "quote a text that begins with " + here.charAt(0);
        } else if (open >= 0 && open <= line) {
            // The structure breaks only where the next quotation mark closes it, which may be far below.
            shown = open;
            here = lines.get(open).strip();
            hint = "a quotation mark opened here is not closed";
        } else if (problem.contains("',' or ']'") || problem.contains("',' or '}'")) {
            hint = "a bracket opened in line " + (from + 1) + " is not closed, or a comma is missing";
        } else if (problem.contains("mapping values are not allowed")
                || COLON_IN_TEXT.matcher(here).matches()) {
            hint = "quote a text that holds ': '";
        } else if (problem.contains("escape")) {
            hint = "in double quotes a backslash begins an escape; use single quotes for paths";
        } else {
            hint = "check indentation, colons and brackets here and in the line before";
        }
        return new InputException(
                Place.line(path, shown + 1), "found '" + clipped(here) + "', which breaks the structure; " + hint, e);
    }

    /** The first line with an odd number of double quotation marks, from 0; -1 if there is none. */
    private int firstUnpairedQuote() {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).chars().filter(c -> c == '"').count() % 2 == 1) {
                return i;
            }
        }
        return -1;
    }

    private static String clipped(String text) {
        return text.length() <= 80 ? text : text.substring(0, 77) + "...";
    }
}
