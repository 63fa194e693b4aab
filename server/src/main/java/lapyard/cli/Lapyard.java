package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import lapyard.answers.GardenDesk;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** {@code lapyard COMMAND ...}; exit code 2 and one line on standard error for anything that was typed wrong. */
@Command(
        name = "lapyard",
        description = "Raised beds of stacked timber: laid out, cut and bought as one garden.",
        subcommands = {TakeOffCommand.class, SnagsCommand.class, SolveCommand.class, MerchantListCommand.class, SiteFileCommand.class, VariationCommand.class, SizesCommand.class, LayOutCommand.class, RescueCommand.class, BackupCommand.class, RestoreCommand.class},
        mixinStandardHelpOptions = true,
        versionProvider = Lapyard.Version.class)
public final class Lapyard {
    static final int REFUSED = 2;

    private Lapyard() {}

    public static void main(String[] args) {
        System.exit(run(args));
    }

    /** All commands, before anything is read. */
    static CommandLine commands() {
        CommandLine line = new CommandLine(new Lapyard());
        line.addSubcommand(new ServeCommand(new GardenDesk()));
        return line;
    }

    /** @return the exit code */
    static int run(String... args) {
        CommandLine line = commands();
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((e, parsed) -> refuse(e.getCommandLine(), e.getMessage()));
        line.setExecutionExceptionHandler((e, command, parsed) -> {
            if (e instanceof UnusableInput) return refuse(command, e.getMessage());
            java.util.logging.Logger.getLogger("lapyard").log(java.util.logging.Level.FINE, "refused", e);
            return refuse(command, "this should not happen: " + e + ". Nothing was changed; please report it with the garden file.");
        });
        if (args.length == 0) {
            line.usage(line.getOut());
            return REFUSED;
        }
        return line.execute(args);
    }

    private static int refuse(CommandLine command, String message) {
        command.getErr().println(message.lines().reduce((a, b) -> a + " " + b).orElse(""));
        return REFUSED;
    }

    /** Names the program, its version and the commit it was built of. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() throws IOException {
            String built = Lapyard.class.getPackage().getImplementationVersion();
            try (InputStream commit = Lapyard.class.getResourceAsStream("commit.txt")) {
                String of = commit == null ? "" : new String(commit.readAllBytes(), StandardCharsets.US_ASCII).strip();
                return new String[] {"lapyard " + (built == null ? "(not packaged)" : built) + (of.isEmpty() ? "" : ", commit " + of)};
            }
        }
    }
}
