package tallywell.readings;

/**
 * How everything that a file leaves open is read.
 *
 * @param mark the decimal mark
 * @param bareUnit the unit of times that stand without one
 * @param twoPart the unit of the second part of times such as 12:30
 */
record Interpretation(DecimalMark mark, TimeUnit bareUnit, TimeUnit twoPart) {}
