/** Our own YAML and CSV, both ways. */
@NullMarked
package tallywell.files;

import org.jspecify.annotations.NullMarked;
