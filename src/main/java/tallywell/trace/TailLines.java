package tallywell.trace;

import org.jspecify.annotations.Nullable;

/** Weights and levers of the lines from each reading to the last: they are the same for every rate. */
final class TailLines {
    private final int from;
    private final int[] count;
    private final double[] mean;
    private final double[] perCount;
    private final double[] perSpread;

    TailLines(double[] t, boolean @Nullable [] leftOut, int from) {
        int n = t.length;
        this.from = from;
        count = new int[n - from];
        mean = new double[n - from];
        perCount = new double[n - from];
        perSpread = new double[n - from];
        double times = 0;
        double squares = 0;
        int used = 0;
        double origin = t[n - 1];
        for (int i = n - 1; i >= from; i--) {
            if (leftOut == null || !leftOut[i]) {
                double dt = t[i] - origin;
                used++;
                times += dt;
                squares += dt * dt;
            }
            int j = i - from;
            count[j] = used;
            perCount[j] = used > 0 ? 1.0 / used : 0;
            mean[j] = times * perCount[j];
            double spread = squares - times * mean[j];
            perSpread[j] = used > 1 && spread > 0 ? 1 / spread : 0;
            mean[j] += origin;
        }
    }

    /** Intercept at t = 0 of the line from each reading to the last through these values. */
    double[] intercepts(double[] t, double[] values, boolean @Nullable [] leftOut) {
        double[] intercepts = new double[count.length];
        double sum = 0;
        double byTime = 0;
        double origin = t[t.length - 1];
        for (int i = t.length - 1; i >= from; i--) {
            if (leftOut == null || !leftOut[i]) {
                sum += values[i];
                byTime += (t[i] - origin) * values[i];
            }
            int j = i - from;
            intercepts[j] = sum * perCount[j] - (byTime - sum * (mean[j] - origin)) * perSpread[j] * mean[j];
        }
        return intercepts;
    }

    int from() {
        return from;
    }

    int count(int j) {
        return count[j - from];
    }

    double varianceAtTrigger(int j) {
        double lever = mean[j - from];
        double spread = perSpread[j - from];
        return spread > 0 ? perCount[j - from] + lever * lever * spread : Double.POSITIVE_INFINITY;
    }
}
