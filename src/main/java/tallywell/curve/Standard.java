package tallywell.curve;

/**
 * One standard well as a point of the calibration.
 *
 * @param level the level, at least 0
 * @param response the net ΔA
 * @param weight how much the point counted in the fit, positive
 */
public record Standard(double level, double response, double weight) {}
