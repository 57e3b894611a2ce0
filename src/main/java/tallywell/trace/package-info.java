/** One well over time: baseline, finished part, creep, ΔA. */
@NullMarked
package tallywell.trace;

import org.jspecify.annotations.NullMarked;
