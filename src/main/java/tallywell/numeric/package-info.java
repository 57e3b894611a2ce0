/** Numerical routines on plain series; knows nothing of plates. */
@NullMarked
package tallywell.numeric;

import org.jspecify.annotations.NullMarked;
