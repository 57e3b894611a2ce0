/** From readings, layout and method to values, stage by stage. */
@NullMarked
package tallywell.workup;

import org.jspecify.annotations.NullMarked;
