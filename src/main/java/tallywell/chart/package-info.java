/** Results as drawings, without windows. */
@NullMarked
package tallywell.chart;

import org.jspecify.annotations.NullMarked;
