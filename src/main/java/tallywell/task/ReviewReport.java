package tallywell.task;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tallywell.files.HiddenCharacters;
import tallywell.files.ReviewFile;
import tallywell.files.ReviewRecord;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.notice.Place;
import tallywell.report.WorkbookOrigin;

/**
 * Says whether a report is a draft, checked or approved, and records who checked or approved it in a file beside it. The
 * record is bound to the bytes of the report, which is never changed.
 */
public final class ReviewReport {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss XXX", Locale.ROOT);
    private static final int LONGEST_NAME = 200;
    private static final String NO_SIGNATURE =
            "A hash shows a change by accident, not by intent: whoever can write here"
                    + " can write both files. This is no electronic signature in the sense of any regulation.";

    /**
     * What to record; nothing is only asked for the state.
     *
     * @param report the workbook
     * @param step what was done, if anything
     * @param by who did it; counts with a step only
     * @param now when
     * @param zone the time zone in which times are shown
     * @param reason why it is done although a batch failed its acceptance; empty if none is given
     * @param against folder of the original files, for what the workbook does not carry
     */
    public record Request(
            Path report,
            Optional<ReviewRecord.Step> step,
            String by,
            Instant now,
            ZoneId zone,
            String reason,
            Optional<Path> against) {
        /** The same with a reason. */
        public Request because(String why) {
            return new Request(report, step, by, now, zone, why, against);
        }

        /** The same with the original files. */
        public Request against(Path folder) {
            return new Request(report, step, by, now, zone, reason, Optional.of(folder));
        }
    }

    /**
     * What came of it.
     *
     * @param lines the state, and how it came about
     * @param notices what the user should be told
     * @param changed whether the report has changed since it was checked or approved
     * @param written the review file, where something was recorded
     */
    public record Outcome(List<String> lines, List<Notice> notices, boolean changed, Optional<Path> written) {}

    /** The request to check a report. */
    public static Request checked(Path report, String by, Instant now, ZoneId zone) {
        return new Request(report, Optional.of(ReviewRecord.Step.CHECKED), by, now, zone, "", Optional.empty());
    }

    /** The request to approve a report. */
    public static Request approved(Path report, String by, Instant now, ZoneId zone) {
        return new Request(report, Optional.of(ReviewRecord.Step.APPROVED), by, now, zone, "", Optional.empty());
    }

    /** The request to say what state a report is in. */
    public static Request state(Path report, Instant now, ZoneId zone) {
        return new Request(report, Optional.empty(), "", now, zone, "", Optional.empty());
    }

    /**
     * Shows the state of a report, after recording a step where one is asked for.
     *
     * @throws InputException if the file is no report of ours, or the step may not be taken; nothing is written
     */
    public Outcome run(Request request) throws InputException, OutputException {
        Path report = request.report();
        WorkbookOrigin origin = origin(report);
        String hash = Hash.of(report);
        Path file = beside(report);
        ReviewRecord review = Files.exists(file)
                ? new ReviewFile().read(file)
                : new ReviewRecord(String.valueOf(report.getFileName()), List.of());
        if (!origin.isOurs() && (request.step().isPresent() || review.entries().isEmpty())) {
            throw new InputException(
                    Place.file(report),
                    "found a workbook that " + program(origin) + " saved last; expected a summary as 'tallywell workup'"
                            + " wrote it, and no other program since");
        }
        List<Notice> notices = new ArrayList<>();
        Optional<Path> written = Optional.empty();
        if (request.step().isPresent()) {
            refuseOddName(request);
            Recheck.Outcome again = rechecked(request);
            notices.addAll(again.notices());
            review = with(request, review, hash, !again.failed().isEmpty());
            written = Optional.of(save(report, file, review));
            ReviewRecord.Entry entry = review.entries().get(review.entries().size() - 1);
            if (!origin.author().isEmpty() && entry.isBy(origin.author())) {
                notices.add(Notice.attention(
                        Place.file(report),
                        "'" + request.by() + "' is named as its operator, too; a second person sees more"));
            }
        }
        boolean changed = !review.entries().isEmpty() && review.of(hash).isEmpty();
        return new Outcome(lines(request, review, hash), notices, changed, written);
    }

    private static WorkbookOrigin origin(Path report) throws InputException {
        if (Files.isDirectory(report)) {
            throw new InputException(Place.file(report), "found a folder; expected a summary such as run.xlsx");
        }
        if (!Files.exists(report)) {
            throw new InputException(Place.file(report), "there is no such file");
        }
        try {
            return WorkbookOrigin.of(report)
                    .orElseThrow(() -> new InputException(
                            Place.file(report),
                            "found no workbook; expected a summary (.xlsx) as 'tallywell workup' wrote it"));
        } catch (IOException e) {
            throw new InputException(Place.file(report), "the file cannot be read (" + e.getMessage() + ")", e);
        }
    }

    private static String program(WorkbookOrigin origin) {
        return origin.application().isEmpty() ? "an unknown program" : "'" + origin.application() + "'";
    }

    /** The review file of a report: beside it and named after it. */
    static Path beside(Path report) {
        String name = String.valueOf(report.getFileName());
        return report.resolveSibling(name.replaceFirst("[.][^.]*$", "") + ".review.yaml");
    }

    private static void refuseOddName(Request request) throws InputException {
        String by = request.by().strip();
        if (by.isEmpty() || by.length() > LONGEST_NAME || by.chars().anyMatch(Character::isISOControl)) {
            throw new InputException(
                    Place.nowhere(),
                    "found no name that can stand in a record; expected one of 1 to " + LONGEST_NAME
                            + " characters, such as \"J. Doe\"");
        }
        Optional<String> hidden = HiddenCharacters.first(by + request.reason());
        if (hidden.isPresent()) {
            throw new InputException(
                    Place.nowhere(),
                    "found the invisible character " + hidden.get() + " in the name or the reason; type it anew");
        }
    }

    /** Nobody can check what is not what the program made of its inputs. */
    private static Recheck.Outcome rechecked(Request request) throws InputException, OutputException {
        Recheck.Outcome again = new Recheck().run(request.report(), request.against());
        if (!again.isIdentical()) {
            throw new InputException(
                    Place.file(request.report()),
                    again.sentence() + "; the first: " + again.lines().get(0)
                            + ". Nothing is recorded; 'tallywell recheck' lists them all");
        }
        if (!again.failed().isEmpty() && request.reason().isBlank()) {
            throw new InputException(
                    Place.file(request.report()),
                    "the batch fails its acceptance (" + String.join(", ", again.failed())
                            + "); expected --reason with why it goes out all the same");
        }
        return again;
    }

    private static ReviewRecord with(Request request, ReviewRecord review, String hash, boolean failed)
            throws InputException {
        ReviewRecord.Step step = request.step().orElseThrow();
        String by = request.by().strip();
        Place place = Place.file(request.report());
        Optional<ReviewRecord.Entry> before = review.of(hash).stream()
                .filter(each -> each.step() == step && each.isBy(by))
                .findFirst();
        if (before.isPresent()) {
            throw new InputException(
                    place,
                    "'" + before.get().by() + "' has " + step.word() + " it already, "
                            + time(before.get(), request.zone()) + "; nothing is recorded");
        }
        if (step == ReviewRecord.Step.APPROVED
                && review.checkedByAnother(hash, by).isEmpty()) {
            throw new InputException(place, unchecked(review, hash, by));
        }
        Instant now = request.now().truncatedTo(ChronoUnit.SECONDS);
        for (ReviewRecord.Entry each : review.entries()) {
            if (each.at().isAfter(now)) {
                throw new InputException(
                        place,
                        "found the time " + now + ", before '" + each.by() + "' "
                                + each.step().word() + " it, " + time(each, request.zone())
                                + "; expected a later time");
            }
        }
        List<ReviewRecord.Entry> entries = new ArrayList<>(review.entries());
        entries.add(new ReviewRecord.Entry(
                step, by, now, hash, failed ? request.reason().strip() : ""));
        return new ReviewRecord(String.valueOf(request.report().getFileName()), entries);
    }

    private static String unchecked(ReviewRecord review, String hash, String by) {
        if (!review.of(hash).isEmpty()) {
            return "'" + by + "' checked it and cannot approve it as well; expected a second person";
        }
        return "found no check of this workbook by a second person"
                + (review.entries().isEmpty() ? "" : " since it changed")
                + "; expected one with --checked-by before --approved-by";
    }

    private static Path save(Path report, Path file, ReviewRecord review) throws OutputException {
        try (Outputs outputs = new Outputs(true, List.of(report))) {
            outputs.keeps(file);
            outputs.write(file, out -> out.write(new ReviewFile().text(review).getBytes(StandardCharsets.UTF_8)));
            outputs.commit();
        }
        return file;
    }

    private static List<String> lines(Request request, ReviewRecord review, String hash) {
        List<String> lines = new ArrayList<>();
        String state = review.state(hash).map(ReviewRecord.Step::word).orElse("draft");
        boolean fallen = !review.entries().isEmpty() && review.of(hash).isEmpty();
        lines.add(request.report() + ": " + state
                + (fallen
                        ? "; the workbook has changed since it was "
                                + last(review).step().word()
                        : ""));
        for (ReviewRecord.Entry each : review.entries()) {
            boolean stands = each.sha256().equals(hash);
            lines.add((stands ? "  " : "  was ") + each.step().word() + " by " + each.by() + ", "
                    + time(each, request.zone())
                    + (stands ? "" : ", when its SHA-256 was " + each.sha256())
                    + (each.reason().isEmpty() ? "" : ", though a batch failed: " + each.reason()));
        }
        lines.add("  SHA-256 " + hash);
        lines.add(NO_SIGNATURE);
        return lines;
    }

    private static ReviewRecord.Entry last(ReviewRecord review) {
        return review.entries().get(review.entries().size() - 1);
    }

    /** A time as people in a zone read it, with its offset. */
    private static String time(ReviewRecord.Entry entry, ZoneId zone) {
        return TIME.format(entry.at().atZone(zone));
    }
}
