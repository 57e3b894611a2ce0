/** Assay method, sample list, run: data only. */
@NullMarked
package tallywell.method;

import org.jspecify.annotations.NullMarked;
