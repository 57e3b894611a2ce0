/** Workbook and CSV: writes them. */
@NullMarked
package tallywell.report;

import org.jspecify.annotations.NullMarked;
