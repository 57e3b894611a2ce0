/** Several runs of the same samples: comparison and combination. */
@NullMarked
package tallywell.across;

import org.jspecify.annotations.NullMarked;
