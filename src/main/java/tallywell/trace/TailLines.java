package tallywell.trace;

/** Weights and levers of the lines from each reading to the last: they are the same for every rate. */
final class TailLines {
    private final int from;
    private final int last;
    private final double[] sinceLast;
    private final double[] bySum;
    private final double[] byProducts;
    private final double[] varianceAtTrigger;

    /**
     * Looks at the times.
     *
     * @param t times in s
     * @param from first reading that a line may begin at
     */
    TailLines(double[] t, int from) {
        int m = t.length - from;
        this.from = from;
        last = t.length - 1;
        sinceLast = new double[m];
        bySum = new double[m];
        byProducts = new double[m];
        varianceAtTrigger = new double[m];
        double times = 0;
        double squares = 0;
        for (int j = m - 1; j >= 0; j--) {
            double dt = t[from + j] - t[last];
            sinceLast[j] = dt;
            times += dt;
            squares += dt * dt;
            double perCount = 1.0 / (m - j);
            double middle = times * perCount;
            double mean = middle + t[last];
            double spread = squares - times * middle;
            double lever = spread > 0 ? mean / spread : 0;
            bySum[j] = perCount + middle * lever;
            byProducts[j] = -lever;
            varianceAtTrigger[j] = spread > 0 ? perCount + mean * lever : Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Intercepts at t = 0 of the lines from each reading to the last.
     *
     * @param values one for each reading from the first that a line may begin at
     * @param intercepts takes one for each of them
     */
    void intercepts(double[] values, double[] intercepts) {
        double sum = 0;
        double products = 0;
        for (int j = values.length - 1; j >= 0; j--) {
            sum += values[j];
            products += sinceLast[j] * values[j];
            intercepts[j] = sum * bySum[j] + products * byProducts[j];
        }
    }

    int from() {
        return from;
    }

    /** Readings of the line from reading j on. */
    int count(int j) {
        return last + 1 - j;
    }

    /** Variance at t = 0 of the line from reading j on, for readings of variance 1; infinite under two times. */
    double varianceAtTrigger(int j) {
        return varianceAtTrigger[j - from];
    }
}
