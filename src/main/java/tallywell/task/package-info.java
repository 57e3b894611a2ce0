/** What a user can ask for, one class a verb, no arithmetic; shared by both front ends. */
@NullMarked
package tallywell.task;

import org.jspecify.annotations.NullMarked;
