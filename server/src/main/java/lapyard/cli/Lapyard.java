package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.answers.GardenDesk;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** {@code lapyard COMMAND ...}; exit code 2 and one line on standard error for anything that was typed wrong. */
@Command(
        name = "lapyard",
        description = "Raised beds of stacked timber: laid out, cut and bought as one garden.",
        mixinStandardHelpOptions = true,
        versionProvider = Lapyard.Version.class)
public final class Lapyard {
    static final int REFUSED = 2;

    /** Every command by its name, in the order of the help. */
    private static final Map<String, Supplier<Object>> COMMANDS = new LinkedHashMap<>();

    static {
        COMMANDS.put("take-off", TakeOffCommand::new);
        COMMANDS.put("snags", SnagsCommand::new);
        COMMANDS.put("solve", SolveCommand::new);
        COMMANDS.put("merchant-list", IntoGardenCommand.MerchantListCommand::new);
        COMMANDS.put("site-file", IntoGardenCommand.SiteFileCommand::new);
        COMMANDS.put("variation", VariationCommand::new);
        COMMANDS.put("sizes", AskedGardenCommand.SizesCommand::new);
        COMMANDS.put("lay-out", AskedGardenCommand.LayOutCommand::new);
        COMMANDS.put("gardens", StoreReadCommand.GardensCommand::new);
        COMMANDS.put("shelf", StoreReadCommand.ShelfCommand::new);
        COMMANDS.put("rescue", DataFolderCommand.RescueCommand::new);
        COMMANDS.put("backup", DataFolderCommand.BackupCommand::new);
        COMMANDS.put("restore", DataFolderCommand.RestoreCommand::new);
        COMMANDS.put("serve", () -> new ServeCommand(new GardenDesk()));
    }

    private Lapyard() {}

    public static void main(String[] args) {
        System.exit(run(args));
    }

    /**
     * The command that these words begin with, or all where they begin with none: help and near misses need all, and to read
     * the description of each takes a fifth of a short command.
     */
    static CommandLine commands(String... words) {
        CommandLine line = new CommandLine(new Lapyard());
        boolean one = words.length > 0 && COMMANDS.containsKey(words[0]);
        (one ? List.of(words[0]) : COMMANDS.keySet()).forEach(name -> line.addSubcommand(COMMANDS.get(name).get()));
        return line;
    }

    /** @return the exit code */
    static int run(String... args) {
        CommandLine line = commands(args);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((e, parsed) -> refuse(e.getCommandLine(), unread(e)));
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

    /** What is wrong with the words of a command line, and the help to read. */
    private static String unread(CommandLine.ParameterException e) {
        String name = e.getCommandLine().getCommandSpec().qualifiedName(" ");
        return wrong(e, name) + " See " + name + " --help.";
    }

    private static String wrong(CommandLine.ParameterException e, String name) {
        if (e instanceof CommandLine.UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
            String word = unmatched.getUnmatched().get(0);
            String near = unmatched.getSuggestions().isEmpty() ? "" : " Did you mean " + String.join(" or ", unmatched.getSuggestions()) + "?";
            boolean option = word.startsWith("-");
            boolean first = e.getCommandLine().getParent() == null && !option;
            return name + " has no " + (option ? "option " : first ? "command " : "room for ") + word + "." + near;
        }
        if (e instanceof CommandLine.MissingParameterException missing) {
            return name + " needs " + missing.getMissing().stream().map(Lapyard::written).collect(Collectors.joining(" and ")) + ".";
        }
        if (e instanceof CommandLine.OverwrittenOptionException twice) return written(twice.getOverwritten()) + " is given twice: give it once.";
        ArgSpec of = e.getArgSpec();
        if (of == null) return name + " cannot be understood as it stands.";
        String taken = of.type().isEnum()
                ? Stream.of(of.type().getEnumConstants()).map(one -> one.toString().toLowerCase(Locale.ROOT)).collect(Collectors.joining(", "))
                : of.typeInfo().isCollection() || of.typeInfo().isMap() ? "values as in " + of.paramLabel() : "a number";
        return (of.isOption() ? ((OptionSpec) of).longestName() : "what " + name + " takes") + " cannot be \"" + e.getValue() + "\": give " + taken + ".";
    }

    /** As it is written on the command line: {@code --out DIR}, {@code GARDEN.json}. */
    private static String written(ArgSpec arg) {
        return arg.isOption() ? ((OptionSpec) arg).longestName() + " " + arg.paramLabel() : arg.paramLabel();
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
