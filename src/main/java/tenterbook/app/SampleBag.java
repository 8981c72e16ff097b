package tenterbook.app;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.words.Message;

/** Finds the sample archive's bag: in the folder one is in, or beside the program. */
final class SampleBag {
    private SampleBag() {}

    static Optional<Path> find() {
        return Stream.concat(Stream.of(Path.of("")), besideProgram())
                .map(folder -> folder.resolve("sample-archive"))
                .filter(bag -> Files.exists(bag.resolve("bagit.txt")))
                .map(Path::toAbsolutePath)
                .findFirst();
    }

    static ArchiveProblem missing() {
        return new ArchiveProblem(
                Message.of("command.serve.no-sample", "folder", Path.of("").toAbsolutePath()));
    }

    private static Stream<Path> besideProgram() {
        try {
            Path code = Path.of(SampleBag.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            return Stream.iterate(code.toAbsolutePath(), parent -> parent != null, Path::getParent)
                    .skip(1)
                    .limit(2);
        } catch (URISyntaxException e) {
            return Stream.empty();
        }
    }
}
