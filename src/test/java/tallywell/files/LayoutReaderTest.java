package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Unit;

class LayoutReaderTest {
    private static final String SOUND = """
            tallywell: layout/1
            name: Small
            plate: 6
            wells:
              #  1 2 3
              A: o a 1
              B: s 1 .
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.125 g/L}
              s: {role: sample-blank, of: 1}             # sample 1 without trigger enzyme
              q: {role: control, name: "cider, dry", assigned: 0.500 g/L, tolerance: 10 %, dilution: 1+4}
            """;

    @TempDir
    private Path folder;

    private Layout read(String text) throws InputException {
        return new LayoutReader().read(FilesFixture.file(folder, "layout.yaml", text));
    }

    @Test
    void readsEveryRole() throws InputException {
        Layout layout = read(SOUND.replace("s 1 .", "s 1 q"));
        assertThat(layout.name()).isEqualTo("Small");
        assertThat(layout.at(new Well(0, 0))).isEqualTo(new Content.Blank("o", "", true));
        assertThat(layout.at(new Well(0, 2))).isEqualTo(new Content.Sample(1));
        assertThat(layout.at(new Well(1, 0))).isEqualTo(new Content.SampleBlank("s", "", 1));
        Content.Control control = (Content.Control) layout.at(new Well(1, 2));
        assertThat(control.name()).isEqualTo("cider, dry");
        assertThat(control.dilution().factor()).isEqualTo(5);
        assertThat(((Content.Standard) layout.at(new Well(0, 1)))
                        .level()
                        .of("anything")
                        .orElseThrow()
                        .in(Unit.MILLIGRAM_PER_LITRE))
                .isEqualTo(125);
    }

    @Test
    void readsLevelsByAnalyte() throws InputException {
        Layout layout = read(SOUND.replace("level: 0.125 g/L", "levels: {D-glucose: 0.5 g/L, D-fructose: 0.25 g/L}"));
        Content.Standard standard = (Content.Standard) layout.at(new Well(0, 1));
        assertThat(standard.level().of("D-fructose").orElseThrow().value()).isEqualTo(0.25);
        assertThat(standard.level().of("sucrose")).isEmpty();
    }

    /** Place, what was found, what would be right: one message for each mistake. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            A: o a 1                | A: o a                      | line 6: found 2 words in row A; expected 3
            A: o a 1                | A: o zz 1                   | line 6: well A2: found 'zz', which is not in the legend
            A: o a 1                | A: o 0 1                    | line 6: well A2: found the slot '0'
            plate: 6                | plate: 7                    | line 3: found 'plate: 7'; expected one of 6, 12, 24
            B: s 1 .                | C: s 1 .                    | line 7: found the row 'C'; expected rows A to B
            B: s 1 .                | A: s 1 .                    | found the key 'A' a second time
            B: s 1 .                | a: s 1 .                    | found the row A a second time
            {role: blank}           | {role: blnk}                | line 9: found the role 'blnk'; expected one of blank, standard
            {role: blank}           | {rolle: blank}              | line 9: found no key 'role'
            {role: blank}           | {role: blank, gruop: x}     | line 9: found the unknown key 'gruop'; expected one of role, group, trigger
            {role: blank}           | {role: blank, trigger: no}  | found 'trigger: no'; expected 'trigger: none'
            level: 0.125 g/L        | level: 0,125 g/L            | line 10: found 'level: 0,125 g/L', where the comma ends the value; write 0.125 g/L, or quote the text
            level: 0.125 g/L        | level: 0.125 mL             | line 10: found '0.125 mL', which is a volume
            level: 0.125 g/L        | level: -1 g/L               | expected a concentration of 0 or more
            level: 0.125 g/L        | level: 0.125                | without a unit
            , level: 0.125 g/L      |                             | found a standard without a level
            of: 1}                  | of: 9}                      | of sample 9, but no well holds slot 9
            dilution: 1+4           | dilution: 1:5               | two ways
            name: Small             | name: Small # one           | line 2: found 'Small' and then '# one', which would be cut off
            name: Small             | name: &x Small              | found the anchor '&x'
            name: Small             | name: *x                    | found the alias '*x'
            name: Small             | name: !!str Small           | found a tag
            name: Small             | name: "Small                | quotation mark
            name: Small             | name: Small: two: three     | line 2: found 'name: Small: two: three', which breaks the structure; quote a text that holds ': '
            layout/1                | run/1                       | line 1: found 'tallywell: run/1'; expected 'tallywell: layout/1'
            """)
    void saysWhereWhatAndWhatWouldBeRight(String right, String wrong, String message) {
        String text = SOUND.replace(right, wrong == null ? "" : wrong);
        assertThat(text).isNotEqualTo(SOUND);
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("layout.yaml")
                .hasMessageContaining(message);
    }

    @Test
    void tabsAsIndentationAreRefused() {
        assertThatThrownBy(() -> read(SOUND.replace("  A: o", "\tA: o")))
                .hasMessageContaining("line 6: found a tab as indentation");
    }

    @Test
    void secondDocumentIsRefused() {
        assertThatThrownBy(() -> read(SOUND + "---\na: b\n")).hasMessageContaining("second document");
    }

    @ParameterizedTest
    @CsvSource({
        "'',found nothing",
        "'   ',found nothing",
        "'- a',found no line 'tallywell: layout/1'",
        "'plain',found no line 'tallywell: layout/1'"
    })
    void emptyAndOtherFilesAreRefused(String text, String message) {
        assertThatThrownBy(() -> read(text)).hasMessageContaining(message);
    }

    @Test
    void binaryFilesAreRefused() throws IOException {
        Path file = Files.write(folder.resolve("x.yaml"), new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, 1, (byte) 0xff});
        assertThatThrownBy(() -> new LayoutReader().read(file)).hasMessageContaining("UTF-8");
        Path zero = Files.write(folder.resolve("y.yaml"), new byte[] {'a', 0, 'b'});
        assertThatThrownBy(() -> new LayoutReader().read(zero)).isInstanceOf(InputException.class);
    }

    @Test
    void missingFileIsNamed() {
        assertThatThrownBy(() -> new LayoutReader().read(folder.resolve("none.yaml")))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("none.yaml: there is no such file");
    }

    @Test
    void everyFaultyWellIsNamed() {
        assertThatThrownBy(() -> read(SOUND.replace("A: o a 1", "A: x y z")))
                .hasMessageContaining("well A1")
                .hasMessageContaining("well A2")
                .hasMessageContaining("well A3");
    }

    static Stream<Path> shipped() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("plate-layouts"))) {
            return List.copyOf(files.sorted().toList()).stream();
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void shippedLayoutsAreSoundAndHaveBlanks(Path file) throws InputException {
        Layout layout = new LayoutReader().read(file);
        assertThat(layout.where(content -> content instanceof Content.Blank)).hasSizeGreaterThanOrEqualTo(2);
        assertThat(layout.slots()).isNotEmpty();
    }
}
