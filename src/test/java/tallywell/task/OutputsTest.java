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
        Path target = Files.writeString(folder.resolve("a.txt"), "old");
        try (Outputs outputs = new Outputs(true, List.of())) {
            assertThatThrownBy(() -> outputs.write(target, out -> {
                        out.write(1);
                        throw new IOException("No space left on device");
                    }))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("a.txt")
                    .hasMessageContaining("No space left on device");
        }
        assertThat(target).hasContent("old");
        assertThat(names()).containsExactly("a.txt");
    }

    @Test
    void existingFileIsReplacedOnlyWhenAsked() throws Exception {
        Path target = Files.writeString(folder.resolve("a.txt"), "old");
        try (Outputs outputs = new Outputs(false, List.of())) {
            assertThatThrownBy(() -> outputs.write(target, text("new"))).hasMessageContaining("--force");
        }
        assertThat(target).hasContent("old");
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
}
