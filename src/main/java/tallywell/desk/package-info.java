/** What is being edited on the desktop: layouts, runs, undo, recovery, and where dropped files belong; without windows. */
@NullMarked
package tallywell.desk;

import org.jspecify.annotations.NullMarked;
