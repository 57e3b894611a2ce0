package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.OutputException;

class OutputsTest {
    @TempDir
    private Path folder;

    /** The first line of one of our tables. */
    static final String HEADER = "unit,ucum\r\n";

    private static Outputs.Writing text(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void everythingAppearsTogether() throws Exception {
        try (Outputs outputs = new Outputs(false, List.of())) {
            outputs.write(folder.resolve("a.txt"), text("one"));
            outputs.write(folder.resolve("b.txt"), text("two"));
            assertThat(folder.resolve("a.txt")).doesNotExist();
            outputs.commit();
        }
        assertThat(names()).containsExactly("a.txt", "b.txt");
        assertThat(folder.resolve("b.txt")).hasContent("two");
    }

    @Test
    void nothingIsLeftWhereTheWorkStops() throws Exception {
        try (Outputs outputs = new Outputs(false, List.of())) {
            outputs.folder(folder.resolve("tables/inner"));
            outputs.write(folder.resolve("a.txt"), text("one"));
        }
        assertThat(names()).isEmpty();
    }

    @Test
    void failingWriterLeavesTheOldFileIntact() throws Exception {
        Path target = Files.writeString(folder.resolve("a.txt"), HEADER + "old");
        try (Outputs outputs = new Outputs(true, List.of())) {
            assertThatThrownBy(() -> outputs.write(target, out -> {
                        out.write(1);
                        throw new IOException("No space left on device");
                    }))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("a.txt")
                    .hasMessageContaining("No space left on device");
        }
        assertThat(target).hasContent(HEADER + "old");
        assertThat(names()).containsExactly("a.txt");
    }

    @Test
    void existingFileIsReplacedOnlyWhenAsked() throws Exception {
        Path target = Files.writeString(folder.resolve("a.txt"), HEADER + "old");
        try (Outputs outputs = new Outputs(false, List.of())) {
            assertThatThrownBy(() -> outputs.write(target, text("new"))).hasMessageContaining("--force");
        }
        assertThat(target).hasContent(HEADER + "old");
        try (Outputs outputs = new Outputs(true, List.of())) {
            outputs.write(target, text("new"));
            outputs.commit();
        }
        assertThat(target).hasContent("new");
        assertThat(names()).containsExactly("a.txt");
    }

    @Test
    void inputIsNeverReplaced() throws Exception {
        Path input = Files.writeString(folder.resolve("before.csv"), "0.1");
        try (Outputs outputs = new Outputs(true, List.of(input))) {
            assertThatThrownBy(() -> outputs.write(folder.resolve("./x/../before.csv"), text("new")))
                    .hasMessageContaining("one of the files read");
        }
        assertThat(input).hasContent("0.1");
    }

    @Test
    void fileThatAppearsMeanwhileStopsTheWholeSet() throws Exception {
        try (Outputs outputs = new Outputs(false, List.of())) {
            outputs.write(folder.resolve("a.txt"), text("one"));
            outputs.write(folder.resolve("b.txt"), text("two"));
            Files.writeString(folder.resolve("b.txt"), "theirs");
            assertThatThrownBy(outputs::commit)
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("b.txt");
        }
        assertThat(names()).containsExactly("b.txt");
        assertThat(folder.resolve("b.txt")).hasContent("theirs");
    }

    @Test
    void missingFolderIsNamed() {
        try (Outputs outputs = new Outputs(false, List.of())) {
            assertThatThrownBy(() -> outputs.check(folder.resolve("none/a.xlsx")))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("does not exist");
        }
    }

    @Test
    void inputIsNeverReplacedThroughALinkOrAsAnotherNameOfTheSameFile() throws Exception {
        Path input = Files.writeString(folder.resolve("before.csv"), HEADER + "0.1");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), input);
        Path hard = Files.createLink(folder.resolve("hard.csv"), input);
        Path way = Files.createSymbolicLink(folder.resolve("way"), folder);
        for (Path target : List.of(link, hard, way.resolve("before.csv"))) {
            try (Outputs outputs = new Outputs(true, List.of(input))) {
                assertThatThrownBy(() -> outputs.write(target, text("new")))
                        .hasMessageContaining("one of the files read");
            }
            try (Outputs outputs = new Outputs(true, List.of(link))) {
                assertThatThrownBy(() -> outputs.write(target, text("new")))
                        .hasMessageContaining("one of the files read");
            }
        }
        assertThat(input).hasContent(HEADER + "0.1");
    }

    @Test
    void outputThatTurnsOutToBeReadIsDropped() throws Exception {
        Path input = Files.writeString(folder.resolve("results.csv"), HEADER + "0.1");
        try (Outputs outputs = new Outputs(true, List.of())) {
            outputs.write(input, text("new"));
            assertThatThrownBy(() -> outputs.protect(List.of(folder.resolve("./results.csv"))))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("one of the files read");
        }
        assertThat(input).hasContent(HEADER + "0.1");
        assertThat(names()).containsExactly("results.csv");
    }

    @Test
    void onlyFilesOfOursAreReplaced() throws Exception {
        Path theirs = Files.writeString(folder.resolve("results.csv"), "well,A\nA1,0.1\n");
        Path nowhere = Files.createSymbolicLink(folder.resolve("nowhere"), folder.resolve("none"));
        Files.createDirectory(folder.resolve("inner"));
        try (Outputs outputs = new Outputs(true, List.of())) {
            assertThatThrownBy(() -> outputs.check(theirs)).hasMessageContaining("not written by this program");
            assertThatThrownBy(() -> outputs.check(nowhere)).hasMessageContaining("no ordinary file");
            assertThatThrownBy(() -> outputs.check(folder.resolve("inner"))).hasMessageContaining("is a folder");
        }
        try (Outputs outputs = new Outputs(false, List.of())) {
            assertThatThrownBy(() -> outputs.check(nowhere)).hasMessageContaining("exists already");
        }
    }

    @Test
    void twoNamesOfOneFileAreNotTwoOutputs() throws Exception {
        Path one = Files.writeString(folder.resolve("one.csv"), HEADER);
        Path two = Files.createLink(folder.resolve("two.csv"), one);
        try (Outputs outputs = new Outputs(true, List.of())) {
            outputs.write(one, text("1"));
            assertThatThrownBy(() -> outputs.write(two, text("2"))).hasMessageContaining("two outputs of one call");
        }
    }

    @Test
    void hiddenFilesOfAKilledCallAreClearedByTheNextAndThoseOfALivingOneAreNot() throws Exception {
        Path target = Files.writeString(folder.resolve("a.csv"), HEADER + "old");
        Killed.call("writing", folder);
        assertThat(names()).hasSize(3);
        try (Outputs living = new Outputs(true, List.of());
                Outputs next = new Outputs(true, List.of())) {
            living.write(folder.resolve("other.csv"), text("one"));
            next.write(folder.resolve("b.csv"), text("two"));
            assertThat(next.notices()).isEmpty();
            assertThat(living.notices()).hasSize(1);
            next.commit();
            living.commit();
        }
        assertThat(names()).containsExactly("a.csv", "b.csv", "other.csv");
        assertThat(target).hasContent(HEADER + "old");
    }

    @Test
    void callThatIsToldToEndLeavesNothing() throws Exception {
        Killed.call("told", folder);
        assertThat(names()).isEmpty();
    }

    @Test
    void whatWasBeingPutInPlaceIsFinishedByTheNextCall() throws Exception {
        Path tables = Files.createDirectory(folder.resolve("tables"));
        for (String name : List.of("a.csv", "b.csv", "tables/c.csv")) {
            Files.writeString(folder.resolve(name), HEADER + "old");
        }
        Killed.call("moving", folder);
        assertThat(folder.resolve("b.csv")).hasContent(HEADER + "old");
        try (Outputs next = new Outputs(true, List.of())) {
            next.check(tables.resolve("d.csv"));
            assertThat(next.notices().toString())
                    .contains("finished")
                    .contains("c.csv")
                    .contains("b.csv");
            next.check(folder.resolve("d.csv"));
        }
        for (String name : List.of("a.csv", "b.csv", "tables/c.csv")) {
            assertThat(folder.resolve(name)).hasContent(HEADER + "new");
        }
        assertThat(names()).containsExactly("a.csv", "b.csv", "tables");
    }

    @Test
    void fileThatSomeoneHasSavedSinceIsNotReplacedByWhatAKilledCallLeft() throws Exception {
        Files.createDirectory(folder.resolve("tables"));
        Files.writeString(folder.resolve("b.csv"), HEADER + "old");
        Killed.call("moving", folder);
        Files.writeString(folder.resolve("b.csv"), HEADER + "theirs, of another length");
        try (Outputs next = new Outputs(true, List.of())) {
            next.check(folder.resolve("d.csv"));
        }
        assertThat(folder.resolve("b.csv")).hasContent(HEADER + "theirs, of another length");
    }
}
