package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tenterbook.exchange.ProofCheck;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

@Command(name = "verify", mixinStandardHelpOptions = true)
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", descriptionKey = "file")
    private Path file;

    @Override
    public Integer call() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw Refusal.of("command.verify.no-file", "file", file.toAbsolutePath());
        }
        PrintWriter out = spec.commandLine().getOut();
        ProofCheck.Result result = ProofCheck.run(file);
        if (!result.findings().isEmpty()) {
            result.findings().forEach(out::println);
            out.println(Message.of("command.verify.fails"));
            return Main.FOUND_WRONG;
        }
        out.println(Message.of("command.verify.holds"));
        result.shows().forEach(line -> out.println("  " + line));
        out.println(Message.of("command.verify.not-shown"));
        ProofCheck.NOT_SHOWN.forEach(line -> out.println("  " + line));
        return 0;
    }
}
