package tallywell.plate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;

/**
 * Something for each well of a plate; cannot change.
 *
 * @param <T> what each well holds
 */
public final class WellMap<T> {
    private final PlateFormat format;
    private final List<T> values;

    private WellMap(PlateFormat format, List<T> values) {
        this.format = format;
        this.values = values;
    }

    /** Asks for the value of each well in row order. */
    public static <T> WellMap<T> of(PlateFormat format, Function<Well, T> value) {
        List<T> values = new ArrayList<>(format.wells());
        for (Well well : format.all()) {
            values.add(value.apply(well));
        }
        return new WellMap<>(format, List.copyOf(values));
    }

    /** The plate. */
    public PlateFormat format() {
        return format;
    }

    /**
     * What the well holds.
     *
     * @throws IllegalArgumentException if the plate has no such well
     */
    public T get(Well well) {
        return values.get(format.indexOf(well));
    }

    /** The same plate with each value replaced. */
    public <R> WellMap<R> map(Function<T, R> function) {
        return of(format, well -> function.apply(get(well)));
    }

    /** Visits the wells in row order. */
    public void forEach(BiConsumer<Well, T> action) {
        for (Well well : format.all()) {
            action.accept(well, get(well));
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WellMap<?> that && format.equals(that.format) && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return 31 * format.hashCode() + values.hashCode();
    }

    @Override
    public String toString() {
        return format + " " + values;
    }
}
