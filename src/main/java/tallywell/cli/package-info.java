/** The command line. */
@NullMarked
package tallywell.cli;

import org.jspecify.annotations.NullMarked;
