/** Before the plate: dilutions, volumes, times, and where the run departs from them. */
@NullMarked
package tallywell.plan;

import org.jspecify.annotations.NullMarked;
