package tallywell.quantity;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Abridged standard atomic weights.
 *
 * <p>Source: IUPAC Commission on Isotopic Abundances and Atomic Weights, Standard atomic weights of the elements 2021
 * (Prohaska et al., Pure Appl. Chem. 94 (2022) 573), abridged to five significant digits, table 4. C, H, O, N and S
 * were seen; the other elements are from memory.
 */
final class AtomicWeights {
    private static final String TABLE = """
            H 1.0080, Li 6.94, Be 9.0122, B 10.81, C 12.011, N 14.007, O 15.999, F 18.998, Na 22.990, Mg 24.305,
            Al 26.982, Si 28.085, P 30.974, S 32.06, Cl 35.45, K 39.098, Ca 40.078, Cr 51.996, Mn 54.938, Fe 55.845,
            Co 58.933, Ni 58.693, Cu 63.546, Zn 65.38, As 74.922, Se 78.971, Br 79.904, Sr 87.62, Mo 95.95, Ag 107.87,
            Cd 112.41, Sn 118.71, Sb 121.76, I 126.90, Ba 137.33, Hg 200.59, Pb 207.2
            """;

    private static final Map<String, Double> WEIGHTS = TABLE.strip()
            .lines()
            .flatMap(line -> java.util.Arrays.stream(line.split(",")))
            .map(String::strip)
            .filter(entry -> !entry.isEmpty())
            .map(entry -> entry.split(" "))
            .collect(Collectors.toUnmodifiableMap(entry -> entry[0], entry -> Double.parseDouble(entry[1])));

    private AtomicWeights() {}

    /** The weight of an element in g/mol, if the table has it. */
    static Optional<Double> of(String symbol) {
        return Optional.ofNullable(WEIGHTS.get(symbol));
    }
}
