package tallywell.readings;

import java.util.List;
import tallywell.notice.Notice;

/**
 * What a form recognised.
 *
 * @param pieces the readings; none if the rows were understood to hold none
 * @param first the first row that belongs to it
 * @param last the last one
 * @param notes what stands in these rows and was left out
 */
record Finding(List<Piece> pieces, int first, int last, List<Notice> notes) {}
