/** Uncertainty: sources with sensitivities, propagation, Monte Carlo. */
@NullMarked
package tallywell.budget;

import org.jspecify.annotations.NullMarked;
