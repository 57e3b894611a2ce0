package tallywell.task;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.files.ReviewFile;
import tallywell.files.ReviewRecord;
import tallywell.notice.InputException;
import tallywell.report.WorkbookOrigin;

/**
 * Tells from its content whether this program wrote a file and no other has saved it since. A name proves nothing: a
 * reader's export may be called {@code results.csv}.
 */
final class OwnFiles {
    /** Every file of ours says within so many bytes what it is; the longest title of a package stands before that. */
    private static final int HEAD = 1 << 16;

    private static final byte[] ZIP = {'P', 'K', 3, 4};
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G'};

    /** How the first lines of our tables begin; columns that came later stand behind. */
    private static final List<String> TABLES = List.of(
            "run,plate,role,slot,sample,analyte,value,unit,",
            "run,plate,well,role,group,slot,sample,step,analyte,a_before,",
            "run,reading,file,well,time_s,absorbance,mark",
            "run,role,slot,sample,analyte,unit,source,name,estimate,",
            "unit,ucum",
            "slot,sample,dilution,volume,mass_g,extract_mL,density_g_per_mL,group,id,note,treatment");

    private static final List<String> DOCUMENTS = List.of(
            "tallywell: plan/1", "{\n  \"tallywell\": \"results/", "{\n  \"$schema\": \"https://json-schema.org/");

    private static final Pattern PACKED = Pattern.compile("\"hash\": \"sha256:([0-9a-f]{64})\"");

    private OwnFiles() {}

    /** Whether a file that is there is one of ours. */
    static boolean isOurs(Path file) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD);
        }
        if (startsWith(head, ZIP)) {
            return WorkbookOrigin.of(file).filter(WorkbookOrigin::isOurs).isPresent();
        }
        String text = new String(head, StandardCharsets.ISO_8859_1);
        if (text.startsWith("%PDF-")) {
            return contains(file, "<xmp:CreatorTool>Tallywell ");
        }
        if (startsWith(head, PNG)) {
            return text.contains("tEXtSoftware\0Tallywell");
        }
        return isText(text);
    }

    private static boolean isText(String text) {
        boolean picture = text.contains("<svg") && text.contains("<metadata>Tallywell</metadata>");
        boolean descriptor = text.startsWith("{\n  \"profile\": \"data-package\"") && text.contains(", as Tallywell ");
        return picture
                || descriptor
                || TABLES.stream().anyMatch(text::startsWith)
                || DOCUMENTS.stream().anyMatch(text::startsWith);
    }

    private static boolean startsWith(byte[] head, byte[] magic) {
        return head.length >= magic.length && Arrays.equals(head, 0, magic.length, magic, 0, magic.length);
    }

    /** Whether a text of plain letters, the first of which is not in it again, stands anywhere in a file. */
    private static boolean contains(Path file, String wanted) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), HEAD)) {
            int at = 0;
            for (int next = in.read(); next >= 0; next = in.read()) {
                at = next == wanted.charAt(at) ? at + 1 : next == wanted.charAt(0) ? 1 : 0;
                if (at == wanted.length()) {
                    return true;
                }
            }
            return false;
        }
    }

    /** The hashes that a data package of ours states for its files; none where there is no package. */
    static Set<String> packed(Path folder) throws IOException {
        Path descriptor = folder.resolve("datapackage.json");
        Set<String> hashes = new HashSet<>();
        if (Files.isRegularFile(descriptor) && isOurs(descriptor)) {
            try (BufferedReader lines = new BufferedReader(
                    new InputStreamReader(Files.newInputStream(descriptor), StandardCharsets.ISO_8859_1))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                    Matcher hash = PACKED.matcher(line);
                    while (hash.find()) {
                        hashes.add(hash.group(1));
                    }
                }
            }
        }
        return hashes;
    }

    /** Whether a file stands, as it is listed, in a data package of ours. */
    static boolean isPacked(Path file) throws IOException {
        try {
            String hash = Hash.of(file);
            for (Path folder = file.toAbsolutePath().getParent(); folder != null; folder = folder.getParent()) {
                if (packed(folder).contains(hash)) {
                    return true;
                }
            }
            return false;
        } catch (InputException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** Whether a person has checked or approved exactly these bytes of a summary; what cannot be read counts as yes. */
    static boolean isReviewed(Path report) {
        Path beside = ReviewReport.beside(report);
        if (!Files.exists(beside)) {
            return false;
        }
        try {
            ReviewRecord review = new ReviewFile().read(beside);
            return review.state(Hash.of(report)).isPresent();
        } catch (InputException e) {
            return true;
        }
    }
}
