/** The printed form: PDF pages of the summary and of the bench sheet. */
@NullMarked
package tallywell.paper;

import org.jspecify.annotations.NullMarked;
