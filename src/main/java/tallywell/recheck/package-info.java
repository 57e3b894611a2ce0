/** A workbook of ours read back: what it carries, and where it differs from one made anew. */
@NullMarked
package tallywell.recheck;

import org.jspecify.annotations.NullMarked;
