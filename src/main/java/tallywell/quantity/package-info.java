/** Numbers with unit, and with uncertainty. */
@NullMarked
package tallywell.quantity;

import org.jspecify.annotations.NullMarked;
