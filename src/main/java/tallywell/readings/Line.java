package tallywell.readings;

import tallywell.notice.Place;

/**
 * A line of words between readings.
 *
 * @param text its words
 * @param place where it stands
 */
record Line(String text, Place place) {}
