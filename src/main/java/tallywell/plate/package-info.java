/** Formats, wells, layouts, readings as they were taken. */
@NullMarked
package tallywell.plate;

import org.jspecify.annotations.NullMarked;
