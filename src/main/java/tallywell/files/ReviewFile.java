package tallywell.files;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import tallywell.notice.InputException;

/** Review files ({@code tallywell: review/1}), both ways. */
public final class ReviewFile {
    private static final String KIND = "review/1";

    /** The text of a review file. */
    public String text(ReviewRecord review) {
        StringBuilder text = new StringBuilder("tallywell: " + KIND + "\n");
        text.append("report: ").append(YamlText.quoted(review.report())).append('\n');
        text.append("entries:\n");
        for (ReviewRecord.Entry each : review.entries()) {
            YamlText.Braces entry = new YamlText.Braces()
                    .add("step", each.step().word())
                    .add("by", YamlText.quoted(each.by()))
                    .add("at", YamlText.quoted(each.at().toString()))
                    .add("sha256", YamlText.quoted(each.sha256()));
            if (!each.reason().isEmpty()) {
                entry.add("reason", YamlText.quoted(each.reason()));
            }
            text.append("  - ").append(entry).append('\n');
        }
        return text.toString();
    }

    /** Reads a review file. */
    public ReviewRecord read(Path path) throws InputException {
        YamlMapping top = YamlDocument.read(path, KIND, "report", "entries");
        String report = top.need("report", "'report: \"run.xlsx\"'").text();
        List<ReviewRecord.Entry> entries = new ArrayList<>();
        for (YamlNode item : top.need("entries", "'entries:' as 'tallywell review' writes them")
                .list("one step an item")) {
            entries.add(entry(item));
        }
        return new ReviewRecord(report, entries);
    }

    private static ReviewRecord.Entry entry(YamlNode item) throws InputException {
        YamlMapping keys = item.mapping("a step, such as {step: checked, by: \"J. Doe\", at: …, sha256: …}")
                .only("step", "by", "at", "sha256", "reason");
        YamlNode hash = keys.need("sha256", "the hash of the report");
        if (!hash.text().matches("[0-9a-f]{64}")) {
            throw hash.wrong("found '" + hash.text() + "'; expected 64 hexadecimal digits in small letters");
        }
        return new ReviewRecord.Entry(
                keys.need("step", "'step: checked'").word(ReviewRecord.Step.class),
                keys.need("by", "'by: \"J. Doe\"'").freeText(),
                time(keys.need("at", "'at: \"2026-03-09T13:05:00Z\"'")),
                hash.text(),
                keys.has("reason") ? keys.need("reason", "").freeText() : "");
    }

    private static Instant time(YamlNode node) throws InputException {
        String text = node.text();
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException e) {
            throw node.wrong(new IllegalArgumentException(
                    "found '" + text + "'; expected a time with its offset, such as 2026-03-09T13:05:00Z", e));
        }
    }
}
