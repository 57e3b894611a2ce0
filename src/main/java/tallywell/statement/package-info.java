/** What is said of a run, once: rounded results, bounds, flags and advice in words, for every report and window alike. */
@NullMarked
package tallywell.statement;

import org.jspecify.annotations.NullMarked;
