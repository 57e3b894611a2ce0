/** Acceptance, verdict, advice. */
@NullMarked
package tallywell.assess;

import org.jspecify.annotations.NullMarked;
