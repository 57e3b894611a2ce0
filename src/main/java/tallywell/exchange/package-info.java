/** Results for other programs: JSON and data package. */
@NullMarked
package tallywell.exchange;

import org.jspecify.annotations.NullMarked;
