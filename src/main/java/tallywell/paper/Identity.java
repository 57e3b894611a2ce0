package tallywell.paper;

/**
 * What the foot of a page says of where the page belongs.
 *
 * @param name which may be cut where it is long
 * @param mark which never is, or empty
 */
record Identity(String name, String mark) {}
