package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.exchange.rescue.Rescue;
import tenterbook.exchange.rescue.RescueList;
import tenterbook.words.Message;

@Command(name = "rescue", mixinStandardHelpOptions = true)
final class RescueCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--from", required = true, paramLabel = "FOLDER")
    private Path from;

    @Mixin
    private ArchiveOption folder;

    @Override
    public Integer call() {
        RescueList list;
        try (Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            list = Rescue.run(from, folder.folder, Clock.systemUTC(), terminal);
        }
        list.lines().forEach(line -> spec.commandLine().getOut().println(line.inEnglish()));
        spec.commandLine().getOut().println(Message.of("command.rescued", "folder", folder.folder));
        return list.missing().isEmpty() && list.doubtful().isEmpty() ? 0 : Main.FOUND_WRONG;
    }
}
