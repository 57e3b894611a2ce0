package tallywell.readings;

import java.io.IOException;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.quantity.CellText;
import tallywell.quantity.Numbers;

/** Writes readings as rows of comma-separated text: UTF-8, decimal point, full precision, RFC 4180. */
public final class ReadingsCsv {
    /** The columns. */
    public static final String HEADER = "file,block,plate,label,wavelength_nm,time_s,well,absorbance,mark";

    private final Appendable out;

    /**
     * Prepares to write.
     *
     * @param out where the rows go; lines end with a line feed
     */
    public ReadingsCsv(Appendable out) {
        this.out = out;
    }

    /** Writes the header. */
    public void header() throws IOException {
        out.append(HEADER).append('\n');
    }

    /** Writes all readings of an export, in the order of the file. */
    public void rows(Export export) throws IOException {
        for (Block block : export.blocks()) {
            rows(quoted(export.file().toString()), block);
        }
    }

    private void rows(String file, Block block) throws IOException {
        String nm = block.wavelengthNm().isPresent()
                ? Numbers.plain(block.wavelengthNm().getAsDouble())
                : "";
        String start = file + "," + block.number() + "," + quoted(block.plate()) + "," + quoted(block.label()) + ","
                + nm + ",";
        ReadingSeries series = block.series();
        block.order().<IOException>forEach((well, index) -> {
            out.append(start);
            if (series.isTimed()) {
                out.append(Numbers.plain(series.timeS(well, index)));
            }
            Mark mark = series.mark(well, index);
            out.append(',').append(well.toString()).append(',');
            if (mark == Mark.NONE) {
                out.append(Numbers.plain(series.absorbance(well, index)));
            }
            out.append(',').append(mark.word()).append('\n');
        });
    }

    private static String quoted(String meant) {
        String text = CellText.shown(meant);
        boolean needed =
                text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0;
        return needed ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
