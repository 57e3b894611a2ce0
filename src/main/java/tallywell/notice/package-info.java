/** Things the user should be told, as values. */
@NullMarked
package tallywell.notice;

import org.jspecify.annotations.NullMarked;
