package tenterbook.app;

import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tenterbook.app.start.Preloading;
import tenterbook.exchange.BagRefused;
import tenterbook.exchange.PackRefused;
import tenterbook.labelling.LabelBlocked;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** The program. Without a command it serves the archive in the folder {@code archive}. */
@Command(
        name = Main.NAME,
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        subcommands = {
            ServeCommand.class,
            OpenCommand.class,
            CheckCommand.class,
            PackCommand.class,
            BackupCommand.class,
            RestoreCommand.class,
            RescueCommand.class,
            ReindexCommand.class,
            PhotosCommand.class,
            ImportCommand.class,
            LabelsCommand.class,
            EraseCommand.class,
            ProveCommand.class,
            VerifyCommand.class
        })
public final class Main implements Runnable {
    static final String NAME = "tenterbook";
    static final int FOUND_WRONG = 1;
    static final int CANNOT_OPEN = 3;
    static final int STOPPED = 4;

    @Spec
    private CommandSpec spec;

    public static void main(String[] args) {
        // Numbers, bags and addresses are written in plain digits, also where a computer counts in others (fa, ar-EG,
        // bn).
        Locale.setDefault(Locale.ROOT);
        String[] given = args.length == 0 ? new String[] {"serve"} : args;
        int code = commandLine(given[0]).execute(given);
        if (code != 0) {
            System.exit(code);
        }
    }

    static CommandLine commandLine() {
        return withWords(new CommandLine(new Main()));
    }

    /** With one command alone where it is known already, since describing all of them takes a tenth of a second of each start. */
    private static CommandLine commandLine(String first) {
        Callable<Integer> command = switch (first) {
            case "serve" -> new ServeCommand();
            case "open" -> new OpenCommand();
            default -> null;
        };
        if (command == null) {
            return commandLine();
        }
        Preloading.begin();
        return withWords(new CommandLine(CommandSpec.create().name(NAME)).addSubcommand(first, command));
    }

    private static CommandLine withWords(CommandLine line) {
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setResourceBundle(new HelpWords());
        line.setExecutionExceptionHandler((e, command, parsed) -> {
            int code = exitCode(e);
            command.getErr().println(e.getMessage());
            return code;
        });
        return line;
    }

    /** @throws Exception {@code e} itself, where it is a mistake of the program */
    private static int exitCode(Exception e) throws Exception {
        if (e instanceof Progress.Cancelled) {
            return STOPPED;
        }
        if (e instanceof ArchiveProblem) {
            return CANNOT_OPEN;
        }
        if (e instanceof BagRefused
                || e instanceof PackRefused
                || e instanceof LabelBlocked
                || e instanceof IllegalArgumentException) {
            return FOUND_WRONG;
        }
        throw e;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** The version the jar was built with. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"Tenterbook " + (version == null ? Message.of("command.not-packaged") : version)};
        }
    }
}
