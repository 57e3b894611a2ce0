package tallywell.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tallywell.notice.Notice;

/** What {@code compare} and {@code combine} have in common. */
final class AcrossOptions {
    @Option(names = "--csv", description = "Print CSV instead of a table.")
    private boolean csv;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE.xlsx",
            description = "Write a workbook, too.")
    private @Nullable Path output;

    @Option(
            names = "--shared",
            paramLabel = "WORD",
            split = ",",
            description =
                    "Sources of uncertainty (words of the method file, such as extract-volume) whose error is the same"
                            + " on all plates, beside the usual ones: sample-volume, total-volume, absorptivity, light-path,"
                            + " reader, standard, dilution, density.")
    private List<String> shared = new ArrayList<>();

    @Option(
            names = "--not-shared",
            paramLabel = "WORD",
            split = ",",
            description = "Sources that are not, such as standard where another lot served.")
    private List<String> apart = new ArrayList<>();

    @Option(names = "--force", description = "Replace an existing workbook.")
    private boolean force;

    @Option(names = "--quiet", description = "Say only what is wrong.")
    private boolean quiet;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    boolean csv() {
        return csv;
    }

    Optional<Path> output() {
        return Optional.ofNullable(output);
    }

    List<String> shared() {
        return shared;
    }

    List<String> apart() {
        return apart;
    }

    boolean force() {
        return force;
    }

    /** Makes a request; what a person worded wrongly is wrong usage. */
    <T> T request(Supplier<T> making) {
        try {
            return making.get();
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
    }

    /** Prints what came of it. */
    void show(Console console, List<Notice> notices, String data) {
        if (!quiet) {
            console.notices(notices);
        }
        console.out().print(data);
        console.out().flush();
        if (!quiet && output != null) {
            console.message("written: " + output);
        }
    }
}
