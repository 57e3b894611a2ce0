package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import tallywell.plate.Well;

/** The columns that wells head. */
final class WellHeads {
    final int last;
    final List<Integer> columns = new ArrayList<>();
    final List<Well> wells = new ArrayList<>();
    final List<Facts> facts = new ArrayList<>();

    WellHeads(int last) {
        this.last = last;
    }

    void add(int column, Well well, Facts of) {
        columns.add(column);
        wells.add(well);
        facts.add(of);
    }

    boolean isData(Sheet sheet, int row) {
        for (int column : columns) {
            Look look = sheet.look(row, column);
            if (look == Look.WELL) {
                return false;
            }
            if (look.isReading()) {
                return !isWavelengths(sheet, row);
            }
        }
        return false;
    }

    boolean holdsWells(Sheet sheet, int row) {
        return columns.stream().anyMatch(column -> sheet.look(row, column) == Look.WELL);
    }

    /** A row of wavelengths between headings and readings. */
    boolean isWavelengths(Sheet sheet, int row) {
        int first = sheet.filled(row).get(0);
        return !columns.contains(first)
                && sheet.look(row, first) == Look.TEXT
                && Words.in(sheet.text(row, first)).contains(Meaning.WAVELENGTH)
                && Facts.ofLine(sheet.text(row, first)).wavelengthNm().isEmpty()
                && columns.stream()
                        .allMatch(column -> sheet.look(row, column) == Look.WHOLE
                                && Facts.isWavelength(sheet.number(row, column, DecimalMark.POINT)));
    }
}
