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

@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description =
                "Checks a file that ‘prove’ wrote, and prints what it shows and what not. Needs no archive. Exits 1 on anything wrong.")
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The file to check.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IllegalArgumentException("There is no file %s to check.".formatted(file.toAbsolutePath()));
        }
        PrintWriter out = spec.commandLine().getOut();
        ProofCheck.Result result = ProofCheck.run(file);
        if (!result.findings().isEmpty()) {
            result.findings().forEach(out::println);
            out.println("The proof does not hold.");
            return Main.FOUND_WRONG;
        }
        out.println("The proof holds. It shows:");
        result.shows().forEach(line -> out.println("  " + line));
        out.println("It does not show:");
        ProofCheck.NOT_SHOWN.forEach(line -> out.println("  " + line));
        return 0;
    }
}
