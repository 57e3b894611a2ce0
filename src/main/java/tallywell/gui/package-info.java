/** Windows: what {@code desk} holds, shown and worked on; nothing is computed here. */
@NullMarked
package tallywell.gui;

import org.jspecify.annotations.NullMarked;
