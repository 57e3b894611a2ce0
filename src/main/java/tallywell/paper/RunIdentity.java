package tallywell.paper;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import tallywell.report.InputFile;
import tallywell.report.Report;

/** What tells the pages of one run from those of any other. */
final class RunIdentity {
    private static final int SHORT = 12;

    private RunIdentity() {}

    /** Title, run file and the short hash of all inputs, for the foot of a page. */
    static Identity of(Report report) {
        String title = report.analysis().assay().title();
        return new Identity((title.isEmpty() ? "" : title + " · ") + report.run(), "inputs " + hash(report));
    }

    /**
     * The first twelve digits of the SHA-256 of one line {@code ROLE SHA256} for each input, in their order; names and
     * folders of files do not enter.
     */
    static String hash(Report report) {
        StringBuilder lines = new StringBuilder();
        for (InputFile input : report.provenance().inputs()) {
            lines.append(input.role()).append(' ').append(input.sha256()).append('\n');
        }
        try {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(lines.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest).substring(0, SHORT);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
