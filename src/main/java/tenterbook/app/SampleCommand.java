package tenterbook.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.sample.SampleArchive;

@Command(name = "sample", hidden = true, mixinStandardHelpOptions = true)
final class SampleCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--to", required = true, paramLabel = "BAG")
    private Path to;

    @Override
    public Integer call() throws Exception {
        Path work = Files.createTempDirectory("tenterbook-sample");
        try (Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            SampleArchive.build(to, work, terminal);
        }
        return 0;
    }
}
