/** The importer: any export to readings, by structure. */
@NullMarked
package tallywell.readings;

import org.jspecify.annotations.NullMarked;
