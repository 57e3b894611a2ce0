package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import tallywell.notice.Notice;
import tallywell.notice.Place;

/** Lists blocks for a message. */
final class Candidates {
    private static final int MOST = 12;

    private Candidates() {}

    static List<Notice> list(List<Block> candidates) {
        return list(candidates, candidates.stream().map(block -> "").toList());
    }

    /** Lists blocks, each with a remark behind it. */
    static List<Notice> list(List<Block> candidates, List<String> remarks) {
        List<Notice> notices = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST, candidates.size()); i++) {
            String remark = remarks.get(i).isEmpty() ? "" : " (" + remarks.get(i) + ")";
            notices.add(Notice.information(Place.nowhere(), candidates.get(i).summary() + remark));
        }
        if (candidates.size() > MOST) {
            notices.add(Notice.information(Place.nowhere(), "and " + (candidates.size() - MOST) + " more"));
        }
        return notices;
    }
}
