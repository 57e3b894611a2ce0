package tallywell.report;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** An independent spreadsheet program: LibreOffice without a window, with a profile of its own. */
public final class Office {
    private static final String PROFILE = """
            <?xml version="1.0" encoding="UTF-8"?>
            <oor:items xmlns:oor="http://openoffice.org/2001/registry">
              <item oor:path="/org.openoffice.Office.Calc/Formula/Load">
                <prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop>
              </item>
            </oor:items>
            """;

    private Office() {}

    /** The program, if it is on the path. */
    public static Optional<Path> program() {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .map(folder -> Path.of(folder, "soffice"))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Whether a machine without the program must fail rather than skip. */
    public static boolean isRequired() {
        return "1".equals(System.getenv("TALLYWELL_REQUIRE_OFFICE"));
    }

    /** Loads every workbook of a folder, computes all its formulas, and writes it to another folder. */
    public static void recalculate(Path program, Path from, Path to, Path profile)
            throws IOException, InterruptedException {
        Path user = Files.createDirectories(profile.resolve("user"));
        Files.writeString(user.resolve("registrymodifications.xcu"), PROFILE);
        List<String> command = new ArrayList<>(List.of(
                program.toString(),
                "-env:UserInstallation=" + profile.toUri(),
                "--headless",
                "--convert-to",
                "xlsx",
                "--outdir",
                to.toString()));
        try (var files = Files.list(from)) {
            files.sorted().map(Path::toString).forEach(command::add);
        }
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(profile.resolve("log.txt").toFile())
                .start();
        if (!process.waitFor(120, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IOException(
                    "the spreadsheet program did not finish: " + Files.readString(profile.resolve("log.txt")));
        }
    }
}
