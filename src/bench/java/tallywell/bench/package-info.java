/** Programs that measure speed and quality; they print figures and judge nothing. */
@NullMarked
package tallywell.bench;

import org.jspecify.annotations.NullMarked;
