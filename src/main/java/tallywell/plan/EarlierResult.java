package tallywell.plan;

import java.util.Optional;
import tallywell.quantity.Dilution;
import tallywell.quantity.QuantityRange;

/**
 * What an earlier run says of a sample.
 *
 * @param sample its name
 * @param analyte what was measured
 * @param content what it held, if it has a value above 0
 * @param advised the dilution that the earlier run advised, if it did
 */
public record EarlierResult(
        String sample, String analyte, Optional<QuantityRange> content, Optional<Dilution> advised) {}
