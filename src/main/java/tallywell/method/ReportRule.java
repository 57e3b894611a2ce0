package tallywell.method;

import tallywell.quantity.Unit;

/**
 * Units of the results.
 *
 * @param unit for liquids: a concentration, an amount concentration or a content
 * @param solids for solids: a content
 */
public record ReportRule(Unit unit, Unit solids) {}
