/** Chooses windows or command line. */
@NullMarked
package tallywell;

import org.jspecify.annotations.NullMarked;
