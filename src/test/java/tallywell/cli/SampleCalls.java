package tallywell.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Works two samples up in the folder at hand, with every output there is: started by {@link SameBytesTest} on its own. */
public final class SampleCalls {
    private SampleCalls() {}

    /**
     * Ends with 1 if a call does not end with 0 or 3.
     *
     * @param args the sample whose traces are drawn to files, too
     */
    public static void main(String[] args) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream all = new PrintStream(said, true, StandardCharsets.UTF_8);
        for (String sample : new String[] {"cider-malic-kinetic", "juice-glucose-fructose"}) {
            List<String> words =
                    new ArrayList<>(List.of("workup", "samples/" + sample + "/run.yaml", "-o", sample + ".xlsx"));
            words.addAll(List.of("--tables", sample + "-tables", "--time", "2026-10-02T14:05:00+02:00"));
            if (args.length > 0 && args[0].equals(sample)) {
                words.addAll(List.of("--charts", sample + "-charts"));
            }
            int status = Cli.run(new Console(all, all, false), words.toArray(String[]::new));
            if (status != ExitStatus.DONE && status != ExitStatus.FAILED_ACCEPTANCE) {
                throw new IllegalStateException(said.toString(StandardCharsets.UTF_8));
            }
        }
    }
}
