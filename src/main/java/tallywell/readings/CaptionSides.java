package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import tallywell.notice.Notice;

/**
 * On which side of their readings the captions of a sheet stand, for each kind of fact: a caption stands above unless the
 * whole sheet proves that it stands below. Above the first readings and not below the last is above; the other way round
 * is below; else blank lines that set captions apart from one of their neighbours decide; else it must be asked.
 */
final class CaptionSides {
    /** What captions say that tells readings apart. */
    enum Kind {
        PLATE("the name of a plate"),
        WAVELENGTH("a wavelength"),
        TIME("a time"),
        QUANTITY("what the readings are");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        Optional<String> of(Facts facts) {
            return switch (this) {
                case PLATE -> facts.plate();
                case WAVELENGTH ->
                    facts.wavelengthNm().isPresent() && !facts.has(Meaning.NOTE)
                            ? Optional.of(Double.toString(facts.wavelengthNm().getAsDouble()))
                            : Optional.empty();
                case TIME ->
                    facts.cycle().isPresent()
                            ? Optional.of("cycle " + facts.cycle().getAsInt())
                            : facts.time()
                                    .filter(time -> facts.has(Meaning.TIME))
                                    .map(Moment::toString);
                case QUANTITY ->
                    facts.isProcessed() || facts.has(Meaning.OTHER_SIGNAL) || facts.has(Meaning.RAW)
                            ? Optional.of(facts.isProcessed() + " " + facts.has(Meaning.OTHER_SIGNAL))
                            : Optional.empty();
            };
        }
    }

    private enum Side {
        ABOVE,
        BELOW,
        OPEN
    }

    private final Sheet sheet;
    private final List<Scan.Gap> gaps;
    private final Map<Kind, Side> sides = new EnumMap<>(Kind.class);
    private final List<Notice> notes = new ArrayList<>();
    private String doubt = "";

    CaptionSides(Sheet sheet, List<Scan.Gap> gaps) {
        this.sheet = sheet;
        this.gaps = gaps;
        for (Kind kind : Kind.values()) {
            sides.put(kind, gaps.size() < 2 ? Side.ABOVE : side(kind));
        }
    }

    /** The values that the lines of a gap give, with the row of the first. */
    private record Said(Set<String> values, int row) {}

    private Said said(Kind kind, Scan.Gap gap) {
        Set<String> values = new LinkedHashSet<>();
        int first = -1;
        for (int row = gap.from(); row < gap.to(); row++) {
            if (!sheet.isBlank(row)) {
                Optional<String> value = kind.of(Facts.ofLine(sheet.line(row)));
                first = value.isPresent() && first < 0 ? row : first;
                value.ifPresent(values::add);
            }
        }
        return new Said(values, first);
    }

    private Side side(Kind kind) {
        List<Said> all = gaps.stream().map(gap -> said(kind, gap)).toList();
        int last = all.size() - 1;
        boolean top = !all.get(0).values().isEmpty();
        boolean bottom = !all.get(last).values().isEmpty();
        List<Integer> between = new ArrayList<>();
        Set<String> different = new LinkedHashSet<>();
        for (int i = 0; i <= last; i++) {
            different.addAll(all.get(i).values());
            if (i > 0 && i < last && !all.get(i).values().isEmpty()) {
                between.add(i);
            }
        }
        if (last == 1) {
            return !top && bottom && isSafe(kind, gaps.get(1)) ? below(kind, all.get(1)) : Side.ABOVE;
        }
        if (top && !bottom || different.size() < 2 || !top && !bottom && between.isEmpty()) {
            return Side.ABOVE;
        }
        if (!top && bottom) {
            return between.isEmpty() ? unused(kind, all.get(last)) : below(kind, all.get(last));
        }
        if (between.isEmpty()) {
            return Side.ABOVE;
        }
        Side attached = attached(between, all);
        if (attached == Side.BELOW) {
            return below(kind, all.get(between.get(0)));
        }
        if (attached == Side.OPEN) {
            int row = all.get(between.get(0)).row();
            doubt = "found " + kind.label + " in '" + sheet.line(row) + "' ("
                    + sheet.table().place(row).text()
                    + ") between readings, and nothing shows whether it belongs to those above or below; expected captions"
                    + " above the first readings, or below the last, and not both";
        }
        return attached;
    }

    /** Below a single grid stand statistics and remarks too; only a line that says nothing else names it. */
    private boolean isSafe(Kind kind, Scan.Gap gap) {
        for (int row = gap.from(); row < gap.to(); row++) {
            if (!sheet.isBlank(row)) {
                Facts line = Facts.ofLine(sheet.line(row));
                boolean numbers = sheet.filled(row).size() > 2;
                if (kind.of(line).isPresent()
                        && (numbers || line.has(Meaning.NOTE) || line.has(Meaning.OTHER_TIME) || kind == Kind.TIME)) {
                    return false;
                }
            }
        }
        return true;
    }

    private Side below(Kind kind, Said said) {
        notes.add(Notice.information(
                sheet.table().place(said.row()),
                "'" + sheet.line(said.row()) + "': " + kind.label + " stands below its readings throughout"));
        return Side.BELOW;
    }

    private Side unused(Kind kind, Said said) {
        notes.add(Notice.attention(
                sheet.table().place(said.row()),
                "left out: '" + sheet.line(said.row()) + "', " + kind.label + " below the last readings only"));
        return Side.ABOVE;
    }

    /** Blank lines on one side of the captions, and none on the other, show whose they are. */
    private Side attached(List<Integer> between, List<Said> all) {
        int up = 0;
        int down = 0;
        for (int i : between) {
            Scan.Gap gap = gaps.get(i);
            int row = all.get(i).row();
            boolean blankAbove = IntStream.range(gap.from(), row).anyMatch(sheet::isBlank);
            boolean blankBelow = IntStream.range(row, gap.to()).anyMatch(sheet::isBlank);
            up += blankBelow && !blankAbove ? 1 : 0;
            down += blankAbove && !blankBelow ? 1 : 0;
        }
        return down == between.size() ? Side.ABOVE : up == between.size() ? Side.BELOW : Side.OPEN;
    }

    boolean isAnyBelow() {
        return sides.containsValue(Side.BELOW);
    }

    List<Notice> notes() {
        return notes;
    }

    /**
     * What stands above and below, each fact from its side.
     *
     * @param later whether the words above may be those below other readings
     */
    Facts join(Facts above, Facts below, boolean later) {
        Facts joined = later && !isAnyAbove() ? above.withLabel("").withMeanings(Set.of()) : above;
        if (sides.get(Kind.PLATE) == Side.BELOW) {
            joined = below.plate().map(joined::withPlate).orElse(joined.withoutPlate());
        }
        if (sides.get(Kind.WAVELENGTH) == Side.BELOW) {
            joined = joined.withoutWavelength();
            joined = below.wavelengthNm().isPresent()
                    ? joined.withWavelength(below.wavelengthNm().getAsDouble())
                    : joined;
        }
        if (sides.get(Kind.TIME) == Side.BELOW) {
            joined = joined.withTime(below.time()).withCycle(below.cycle());
        }
        if (sides.get(Kind.QUANTITY) == Side.BELOW) {
            joined = joined.without(Meaning.PROCESSED)
                    .without(Meaning.OTHER_SIGNAL)
                    .without(Meaning.RAW);
            for (Meaning meaning : below.meanings()) {
                joined = joined.plus(meaning);
            }
        }
        return joined.label().isEmpty() && !below.label().isEmpty() && !isAnyAbove()
                ? joined.withLabel(below.label())
                : joined;
    }

    private boolean isAnyAbove() {
        for (Kind kind : Kind.values()) {
            if (sides.get(kind) == Side.ABOVE
                    && gaps.stream()
                            .skip(1)
                            .anyMatch(gap -> !said(kind, gap).values().isEmpty())) {
                return true;
            }
        }
        return false;
    }

    /** What holds on for the readings further down: only what stands above. */
    Facts lasting(Facts facts) {
        Facts lasting = facts;
        lasting = sides.get(Kind.PLATE) == Side.BELOW ? lasting.withoutPlate() : lasting;
        lasting = sides.get(Kind.WAVELENGTH) == Side.BELOW ? lasting.withoutWavelength() : lasting;
        lasting = sides.get(Kind.TIME) == Side.BELOW
                ? lasting.withTime(Optional.empty()).withCycle(java.util.OptionalInt.empty())
                : lasting;
        return isAnyBelow() && !isAnyAbove() ? lasting.withLabel("").withMeanings(Set.of()) : lasting;
    }

    Facts doubted(Facts facts) {
        return doubt.isEmpty() ? facts : facts.withDoubt(doubt);
    }
}
