package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PackingTest {
    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Packing.Packed pack(byte[] bytes) {
        return Packing.pack(bytes).orElseThrow();
    }

    private static byte[] back(Packing.Packed packed) throws IOException {
        return packed.packing().unpack(packed.rows());
    }

    @Test
    void plainTextStandsAsItIs() throws IOException {
        Packing.Packed packed = pack(bytes("tallywell: run/1\n\n  - {wells: \"µ ≥ 3\"}\n"));
        assertThat(packed.packing()).isEqualTo(Packing.TEXT);
        assertThat(packed.rows()).containsExactly("tallywell: run/1", "", "  - {wells: \"µ ≥ 3\"}");
        assertThat(back(packed)).isEqualTo(bytes("tallywell: run/1\n\n  - {wells: \"µ ≥ 3\"}\n"));
        assertThat(pack(bytes("a;b\r\n1;2\r\n")).packing()).isEqualTo(Packing.TEXT_CRLF);
    }

    @Test
    void whateverACellCouldLoseIsPacked() throws IOException {
        List<byte[]> files = List.of(
                new byte[0],
                bytes("no end of line"),
                bytes("mixed\r\nends\n"),
                bytes("tab\tstop\n"),
                bytes("\uFEFFmarked\n"),
                bytes("looks _x0041_ escaped\n"),
                bytes("x".repeat(40_000) + "\n"),
                "Säure;µl\n".getBytes(Charset.forName("windows-1252")),
                new byte[] {'P', 'K', 3, 4, 0, 0, -1});
        for (byte[] file : files) {
            Packing.Packed packed = pack(file);
            assertThat(packed.packing()).isEqualTo(Packing.PACKED);
            assertThat(packed.rows()).allSatisfy(row -> assertThat(row).hasSizeLessThanOrEqualTo(32_000));
            assertThat(back(packed)).isEqualTo(file);
        }
    }

    @Test
    void anyBytesComeBack() throws IOException {
        Random random = new Random(1);
        String letters = "ab c\n\r\t,;_x0041µ\u0000🙂";
        for (int i = 0; i < 500; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(40); n >= 0; n--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            byte[] file = bytes(text.append(random.nextBoolean() ? "\n" : "").toString());
            assertThat(back(pack(file))).as("%s", text).isEqualTo(file);
        }
    }

    @Test
    void manyMegabytesOfAnExportAreCarriedAndWhatIsTooLargeIsNot() throws IOException {
        byte[] export = bytes("0.1234,0.2345,0.3456,0.4567\n".repeat(400_000));
        Packing.Packed packed = pack(export);
        assertThat(packed.rows()).hasSizeLessThan(10);
        assertThat(back(packed)).isEqualTo(export);
        byte[] noise = new byte[Packing.MOST_CHARACTERS / 4 * 3 + 10];
        new Random(2).nextBytes(noise);
        assertThat(Packing.pack(noise)).isEmpty();
        Carried carried = new Carried(
                List.of(),
                List.of(
                        new CarriedFile("readings", "a", "export.csv", "", export),
                        new CarriedFile("readings", "b", "noise.xlsx", "", noise)));
        assertThat(carried.leftOut()).containsExactly("noise.xlsx");
    }

    @Test
    void damagedRowsAreRefused() {
        Packing.Packed packed = pack(new byte[1000]);
        for (List<String> rows : List.of(
                List.of("%%"),
                List.of("AAAA"),
                List.of(""),
                List.of(packed.rows().get(0).substring(4)))) {
            assertThatThrownBy(() -> Packing.PACKED.unpack(rows)).isInstanceOf(IOException.class);
        }
    }
}
