package tallywell.method;

import java.util.OptionalDouble;

/**
 * What the reader sees.
 *
 * @param species the absorbing substance, such as NADH; empty if the method does not say
 * @param wavelengthNm wavelength in nm, if the method says
 * @param absorptivity molar absorptivity in L/mol/cm, if the method says
 * @param direction where the signal goes
 */
public record Signal(String species, OptionalDouble wavelengthNm, OptionalDouble absorptivity, Direction direction) {}
