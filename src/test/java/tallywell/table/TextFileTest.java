package tallywell.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.notice.InputException;

class TextFileTest {
    @TempDir
    private Path folder;

    private Table read(byte[] bytes) throws IOException, InputException {
        Path file = folder.resolve("file.txt");
        Files.write(file, bytes);
        return Tables.read(file);
    }

    private Table read(String text) throws IOException, InputException {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<List<String>> rows(Table table) {
        List<List<String>> rows = new ArrayList<>();
        for (int r = 0; r < table.rows(); r++) {
            List<String> row = new ArrayList<>();
            for (int c = 0; c < table.width(r); c++) {
                row.add(table.text(r, c));
            }
            rows.add(row);
        }
        return rows;
    }

    /** Examples of RFC 4180, section 2, in its words "aaa", "bbb", "ccc". */
    @Test
    void quotedCellsFollowRfc4180() throws Exception {
        Table table = read("aaa,\"b\r\nbb\",ccc\r\n\"a,1\",\"b\"\"bb\",3\r\nzzz,yyy,xxx");
        assertThat(rows(table))
                .containsExactly(
                        List.of("aaa", "b\r\nbb", "ccc"), List.of("a,1", "b\"bb", "3"), List.of("zzz", "yyy", "xxx"));
        assertThat(table.where(1)).isEqualTo("line 3");
        assertThat(table.where(2, 1)).isEqualTo("line 4, column 2");
    }

    /** Oracle: Apache Commons CSV in its RFC 4180 format, on tables of random cells. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void randomTablesComeBackAsCommonsCsvReadsThem(long seed) throws Exception {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder("1,2,3,4,5,6\r\n");
        String[] cells = {"", "0.25", "\"a,b\"", "\"say \"\"no\"\"\"", "plain text", "\"two\nlines\"", "-1e-3", "\"\""};
        for (int r = 0; r < 60; r++) {
            for (int c = 0; c <= random.nextInt(6); c++) {
                text.append(c == 0 ? "" : ",").append(cells[random.nextInt(cells.length)]);
            }
            text.append(".5").append(random.nextBoolean() ? "\r\n" : "\n");
        }
        String csv = text.toString().replace("\".5", "\",.5");
        List<List<String>> expected = new ArrayList<>();
        for (CSVRecord record : CSVFormat.RFC4180.parse(new StringReader(csv))) {
            expected.add(record.toList());
        }
        assertThat(rows(read(csv))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "UTF-8, false, UTF-8",
        "UTF-8, true, UTF-8 with byte order mark",
        "UTF-16LE, true, UTF-16 LE with byte order mark",
        "UTF-16BE, true, UTF-16 BE with byte order mark",
        "UTF-16LE, false, UTF-16 LE",
        "UTF-16BE, false, UTF-16 BE",
        "windows-1252, false, Windows-1252"
    })
    void encodingIsFoundFromTheBytes(String charset, boolean mark, String name) throws Exception {
        String text = (mark ? "\uFEFF" : "") + "Küvette;Äpfel;20 µL\nB;0,5;0,7\n";
        Table table = read(text.getBytes(Charset.forName(charset)));
        assertThat(table.text(0, 0)).isEqualTo("Küvette");
        assertThat(table.text(0, 2)).isEqualTo("20 µL");
        assertThat(table.form().orElseThrow()).isEqualTo(new TextForm(name, Delimiter.SEMICOLON));
    }

    @Test
    void charactersBeyondSixteenBitsSurviveUtf16() throws Exception {
        String text = "name,value\n" + "x".repeat((1 << 14) - 12) + "𝛥,1\n";
        assertThat(read(("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE)).text(1, 0))
                .endsWith("x𝛥");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '/',
            value = {
                "A\\t0.123\\t0.456/TAB",
                "Sample 1\\t0.123\\nSample 2\\t0.456/TAB",
                "A1;0,456;0,512\\nA2;0,1;0,2/SEMICOLON",
                "A1,0.456\\nA2,0.5/COMMA",
                "A1, 0.456\\nA2, 0.5/COMMA",
                "A1|0,456|0,512/PIPE",
                "A1 0,456 0,512\\nA2 0,2 0,4/BLANKS",
                "A  0.12  0.13\\nB  0.14  0.15/WIDE_BLANKS",
                "Tank 1  0.12  0.13\\nTank 2  0.14  0.15/WIDE_BLANKS",
                "slot,sample\\n1,Tank A\\n2,Tank B/COMMA",
                "slot;sample;dilution\\n1;Cider, dry;1,5/SEMICOLON",
                "sep=|\\na|b/PIPE",
                "Interval 30 s\\nTemperature 25 C\\nGain 3\\nA1,0.1\\nA2,0.2/COMMA"
            })
    void delimiterIsTheOneThatCutsBest(String text, Delimiter expected) throws Exception {
        Table table = read(text.replace("\\n", "\n").replace("\\t", "\t"));
        assertThat(table.form().orElseThrow().delimiter()).isEqualTo(expected);
    }

    @Test
    void emptyCellsAmongBlanksShowByTheirPosition() throws Exception {
        Table table = read("""
                Read of the morning, first of two, in the small lab on the left
                     1      2      3      4
                A  0.101  0.102  0.103  0.104
                B  0.111         0.113  0.114
                C         0.122  0.123
                """);
        assertThat(rows(table).subList(1, 5))
                .containsExactly(
                        List.of("", "1", "2", "3", "4"),
                        List.of("A", "0.101", "0.102", "0.103", "0.104"),
                        List.of("B", "0.111", "", "0.113", "0.114"),
                        List.of("C", "", "0.122", "0.123"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void everyLineEndIsTaken(String end) throws Exception {
        Table table = read("a,1" + end + end + "b,2" + end);
        assertThat(rows(table)).containsExactly(List.of("a", "1"), List.of(""), List.of("b", "2"));
        assertThat(table.where(2)).isEqualTo("line 3");
    }

    @Test
    void openQuotationMarkIsRefusedWithItsLine() {
        assertThatThrownBy(() -> read("a,1\nb,\"2\nc,3\n"))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("line 2: found a quotation mark that is never closed");
    }

    @Test
    void binaryIsRefused() {
        byte[] bytes = new byte[5000];
        new Random(7).nextBytes(bytes);
        assertThatThrownBy(() -> read(bytes))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found no text but binary data");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\n", "   \n", "\uFEFF", ";;;\n;;;\n"})
    void nothingIsRefused(String text) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found nothing in the file");
    }

    @Test
    void tenGigabytesOfOneLineAreRefusedAtOnce() throws Exception {
        Path file = folder.resolve("huge.csv");
        try (RandomAccessFile huge = new RandomAccessFile(file.toFile(), "rw")) {
            huge.setLength(10L << 30);
        }
        assertThatThrownBy(() -> Tables.read(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found 10240 MB; expected at most");
    }

    @Test
    void missingFileAndFolderAreNamed() {
        assertThatThrownBy(() -> Tables.read(folder.resolve("none.csv"))).hasMessageContaining("found no such file");
        assertThatThrownBy(() -> Tables.read(folder)).hasMessageContaining("found a folder");
    }

    @Test
    void tooLargeIsRefusedBeforeItIsRead() throws Exception {
        Path file = folder.resolve("large.txt");
        Files.writeString(file, "a,1\n".repeat(1000));
        assertThatThrownBy(() -> new TextFile(file, new Limits(100, 1000)).table())
                .isInstanceOf(InputException.class)
                .hasMessageContaining("expected at most 0 MB");
        assertThatThrownBy(() -> new TextFile(file, new Limits(10_000, 1000)).table())
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found more than 1000 cells");
    }
}
