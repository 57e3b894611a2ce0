package tallywell.readings;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** What the columns beside a reading say of it. */
final class RowFacts {
    private RowFacts() {}

    static Facts of(Sheet sheet, int row, List<Column> keys, Map<Integer, String> above) {
        Facts facts = Facts.none();
        for (Column column : keys) {
            String own = sheet.text(row, column.index());
            String text = own.isEmpty() ? above.getOrDefault(column.index(), "") : own;
            if (!text.isEmpty()) {
                facts = facts.or(of(column, text, sheet.look(row, column.index())));
            }
        }
        return facts;
    }

    private static Facts of(Column column, String text, Look look) {
        switch (column.role()) {
            case PLATE:
                return Facts.none().withPlate(text);
            case WAVELENGTH:
                Facts named = Facts.ofLine("wavelength " + text);
                return named.wavelengthNm().isPresent()
                        ? Facts.none().withWavelength(named.wavelengthNm().getAsDouble())
                        : Facts.none().withLabel(text);
            case CYCLE, WHOLE:
                return look == Look.WHOLE && text.length() <= 9
                        ? Facts.none().withCycle(OptionalInt.of((int) DecimalMark.POINT.parse(text)))
                        : Facts.ofLine(text);
            default:
                Facts words = Facts.ofHeading(text);
                return words.isSomething() ? words : words.withLabel(text);
        }
    }
}
