package tallywell.trace;

/** What share of many wells says yes, each counted by what it can tell. */
final class Votes {
    private double yes;
    private double all;

    /**
     * One well's say.
     *
     * @param product positive for yes
     * @param weight at least 0
     */
    void add(double product, double weight) {
        if (!(weight >= 0)) {
            throw new IllegalArgumentException("weight must be at least 0 but was " + weight);
        }
        all += weight;
        if (product > 0) {
            yes += weight;
        }
    }

    /** From 0 to 1; 0 where nobody can tell anything. */
    double share() {
        return all > 0 ? yes / all : 0;
    }
}
