package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;

class SampleListReaderTest {
    @TempDir
    private Path folder;

    private SampleList read(String text) throws InputException {
        return new SampleListReader().read(FilesFixture.file(folder, "samples.csv", text));
    }

    @Test
    void readsEveryColumn() throws InputException {
        SampleList list = read("""
                slot,sample,dilution,volume,mass_g,extract_mL,density_g_per_mL,group,id,note
                3,"Purée, raspberry",1+9,0.04 mL,5.012,50,,b,4012345,first
                1,Juice,,,,,1.046,,,
                """);
        Sample puree = list.in(3).orElseThrow();
        assertThat(puree.name()).isEqualTo("Purée, raspberry");
        assertThat(puree.dilution().factor()).isEqualTo(10);
        assertThat(puree.volumeUl()).hasValue(40);
        assertThat(puree.solid()).contains(new Sample.Extraction(5.012, 50));
        assertThat(puree.group()).isEqualTo("b");
        Sample juice = list.in(1).orElseThrow();
        assertThat(juice.dilution().factor()).isEqualTo(1);
        assertThat(juice.densityGPerMl()).hasValue(1.046);
        assertThat(list.in(2)).isEmpty();
    }

    @Test
    void semicolonsAllowDecimalCommas() throws InputException, IOException {
        Path file = folder.resolve("liste.csv");
        Files.write(
                file,
                "slot;sample;dilution;density_g_per_mL\r\n1;Süßmost;2,5;1,046\r\n"
                        .getBytes(Charset.forName("windows-1252")));
        Sample sample = new SampleListReader().read(file).in(1).orElseThrow();
        assertThat(sample.name()).isEqualTo("Süßmost");
        assertThat(sample.dilution().factor()).isEqualTo(2.5);
        assertThat(sample.densityGPerMl()).hasValue(1.046);
    }

    @Test
    void byteOrderMarkAndTabsAreRead() throws InputException {
        assertThat(read("\uFEFFslot\tsample\n7\tMilk\n").in(7).orElseThrow().name())
                .isEqualTo("Milk");
    }

    @Test
    void emptyCellsBeyondTheHeadingsAreNothing() throws InputException {
        assertThat(read("slot,sample\n7,Milk,,\n8\n").in(7).orElseThrow().name())
                .isEqualTo("Milk");
    }

    @Test
    void workbooksAreRead() throws IOException, InputException {
        Path file = folder.resolve("samples.xlsx");
        try (XSSFWorkbook workbook = new XSSFWorkbook();
                var out = Files.newOutputStream(file)) {
            var sheet = workbook.createSheet("list");
            var head = sheet.createRow(0);
            head.createCell(0).setCellValue("slot");
            head.createCell(1).setCellValue("sample");
            head.createCell(2).setCellValue("dilution");
            var row = sheet.createRow(1);
            row.createCell(0).setCellValue(4);
            row.createCell(1).setCellValue("Tank 4");
            row.createCell(2).setCellValue(2.5);
            workbook.write(out);
        }
        Sample sample = new SampleListReader().read(file).in(4).orElseThrow();
        assertThat(sample.name()).isEqualTo("Tank 4");
        assertThat(sample.dilution().factor()).isEqualTo(2.5);
    }

    @Test
    void namesThatLookLikeFormulasStayText() throws InputException {
        assertThat(read("slot,sample\n1,=1+1\n").in(1).orElseThrow().name()).isEqualTo("=1+1");
    }

    @Test
    void marksOfThousandsAreNoDecimalMarks() throws InputException {
        assertThatThrownBy(() -> read("slot;sample;dilution\n1;a;1,000\n"))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found the dilution '1,000', which may be 1 or 1000");
        SampleList plain = read("slot;sample;dilution\n1;a;1000\n2;b;1,125\n3;c;20,0\n");
        assertThat(plain.in(1).orElseThrow().dilution().factor()).isEqualTo(1000);
        assertThat(plain.in(2).orElseThrow().dilution().factor()).isEqualTo(1.125);
        assertThat(plain.in(3).orElseThrow().dilution().factor()).isEqualTo(20);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            slot,sample;1,a;1,b             | line 3: found slot 1 a second time
            slot,sample;,a                  | line 2, column 1: found no slot
            slot,sample;x,a                 | line 2, column 1: found the slot 'x'
            slot,sample;0,a                 | found the slot '0'
            slot,sample,dilution;1,a,-2     | line 2, column 3: found the dilution '-2'
            slot,sample,dilution;1,a,1:10   | line 2, column 3: found the dilution '1:10', which laboratories read in two ways
            slot,sample,dilutoin;1,a,2      | line 1, column 3: found the column 'dilutoin'; expected the headings slot, sample
            slot,sample,slot;1,a,2          | found the column 'slot' a second time
            sample,dilution;a,2             | line 1: found no column 'slot'
            slot,sample,mass_g;1,a,5        | line 2: found a solid without 'extract_mL'
            slot,sample,volume;1,a,5 mg     | which is a mass; expected a volume
            slot,sample,density_g_per_mL;1,a,0 | expected a number above 0
            slot,sample,mass_g,extract_mL;1,a,5,012,100 | line 2, column 5: found '100' under no heading
            slot,sample,dilution,;1,a,2,5   | line 2, column 4: found '5' under no heading
            slot,sample,mass_g,extract_mL,note;1,a,5,012,100 | line 2, column 4: found '012', which begins with 0, under 'extract_mL'
            slot,sample,dilution;1,a,+9     | line 2, column 3: found the dilution '+9'
            slot,sample,dilution;1,a,010    | line 2, column 3: found the dilution '010'
            slot,sample,volume;1,a,020 µL   | found '020 µL', which begins with 0
            slot,sample,mass_g,extract_mL;1,a,1e308,50 | found '1e308' under 'mass_g'; expected a number from
            slot,sample,dilution;1,a,1.000  | line 2, column 3: found the dilution '1.000', which may be 1 or 1000
            slot,sample,dilution;1,a,2.500  | found the dilution '2.500', which may be 2.5 or 2500
            slot,sample,mass_g,extract_mL;1,a,5000,100 | line 2: found 5000 g in an extract of 100 mL
            slot,sample,mass_g,extract_mL;1,a,5,0.1    | line 2: found 5 g in an extract of 0.1 mL
            slot,sample,density_g_per_mL;1,a,x | found 'x' under 'density_g_per_mL'
            """)
    void saysWhereWhatAndWhatWouldBeRight(String lines, String message) {
        assertThatThrownBy(() -> read(lines.replace(';', '\n') + "\n"))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("samples.csv")
                .hasMessageContaining(message);
    }
}
