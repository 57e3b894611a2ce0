package tallywell.trace;

/** What is left of the burst, reading by reading, and what that does to a line drawn from there to the last reading. */
interface Tail {
    /** First reading that a line may begin at. */
    int from();

    /** How many readings the line from reading j on uses. */
    int readings(int j);

    /** Variance at t = 0 of the line from reading j on, from scatter; infinite under two readings. */
    double lineVariance(int j);

    /** Root mean square, over what is believed of the burst, of the error at t = 0 of a line from reading j on. */
    double errorRms(int j);

    /** Mean of the burst left at reading j (reading minus line, so negative where the signal rises). */
    double left(int j);

    /** What the burst left at reading j does not exceed in size, by about 95 % of belief. */
    double leftBound(int j);

    /** How much of the noise carries over from reading to reading. */
    double carry();

    /** Whether the trace jumps from one level to another. */
    boolean jumps();

    /** Whether there is more than one burst and a line. */
    boolean bends();

    /**
     * Square of the size of creep that dies away ({@link BentCreep}), beside burst and line; 0 where
     * there is no more than noise.
     */
    double dyingSquare();
}
