package tallywell.numeric;

/** Sums of products of columns. */
public final class Products {
    private Products() {}

    /**
     * Sum of a[i] b[i] over {@code from} to {@code to - 1}.
     *
     * <p>Four sums are kept side by side: added to one sum, each product would wait for the one before it.
     */
    public static double dot(double[] a, double[] b, int from, int to) {
        double first = 0;
        double second = 0;
        double third = 0;
        double fourth = 0;
        int i = from;
        for (; i < to - 3; i += 4) {
            first += a[i] * b[i];
            second += a[i + 1] * b[i + 1];
            third += a[i + 2] * b[i + 2];
            fourth += a[i + 3] * b[i + 3];
        }
        for (; i < to; i++) {
            first += a[i] * b[i];
        }
        return first + second + (third + fourth);
    }
}
