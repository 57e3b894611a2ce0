/** Any file of cells as rows of text cells: delimited text, xlsx, xls. */
@NullMarked
package tallywell.table;

import org.jspecify.annotations.NullMarked;
