/** Calibration: formula, fit, inverse. */
@NullMarked
package tallywell.curve;

import org.jspecify.annotations.NullMarked;
