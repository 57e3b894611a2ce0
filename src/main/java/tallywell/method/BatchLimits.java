package tallywell.method;

import java.util.OptionalDouble;

/**
 * What the method accepts of a batch besides its blanks, controls and spikes; an absent limit is not assessed.
 *
 * @param blankSdMost largest standard deviation of the ΔA of a group of blanks
 * @param standardLeast smallest back-calculated level of a standard over its level, as a fraction
 * @param standardMost largest back-calculated level of a standard over its level, as a fraction
 * @param slopeLeast smallest slope of the calibration over what the absorptivity leads one to expect, as a fraction
 * @param slopeMost largest slope of the calibration over what the absorptivity leads one to expect, as a fraction
 * @param absorbanceLeft smallest absorbance after the reaction in a falling assay, below which the indicator may be used up
 * @param indicatorLeft smallest absorbance of indicator that must be left in a falling assay, colour and plate taken off
 * @param background absorbance of plate and reagents without indicator
 */
public record BatchLimits(
        OptionalDouble blankSdMost,
        OptionalDouble standardLeast,
        OptionalDouble standardMost,
        OptionalDouble slopeLeast,
        OptionalDouble slopeMost,
        OptionalDouble absorbanceLeft,
        OptionalDouble indicatorLeft,
        OptionalDouble background) {}
