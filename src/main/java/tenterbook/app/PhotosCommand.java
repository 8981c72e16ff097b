package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.archive.arrival.Arrivals;
import tenterbook.archive.arrival.PhotoFolder;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.words.Message;

@Command(name = "photos", mixinStandardHelpOptions = true)
final class PhotosCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--from", paramLabel = "DIR")
    private @Nullable Path from;

    @Option(names = "--again")
    private boolean again;

    @Option(names = "--within")
    private boolean within;

    @Override
    public Integer call() throws IOException {
        if ((from == null) != again) {
            throw new CommandLine.ParameterException(
                    spec.commandLine(),
                    Message.of("command.photos-from-or-again").inEnglish());
        }
        PrintWriter out = spec.commandLine().getOut();
        try (Archive archive = folder.existing(Clock.systemUTC())) {
            Originals originals = new Originals(archive.folder().photos());
            PhotoIntake intake =
                    new PhotoIntake(originals, new Previews(archive.folder().previews(), originals), archive.cloths());
            return from == null ? lookedAgain(archive, intake, out) : taken(from, archive, intake, out);
        }
    }

    private static int lookedAgain(Archive archive, PhotoIntake intake, PrintWriter out) {
        PhotoRegistration.AgainReport report = new PhotoRegistration(archive, intake).again();
        report.findings().forEach(out::println);
        out.println(Message.of(
                "photo.looked-again",
                "shown",
                report.shown(),
                "left",
                report.findings().size()));
        out.flush();
        return report.findings().isEmpty() ? 0 : Main.FOUND_WRONG;
    }

    private int taken(Path source, Archive archive, PhotoIntake intake, PrintWriter out) throws IOException {
        List<Path> files = PhotoFolder.files(
                source.toAbsolutePath().toString(), within, archive.folder().root());
        ArrivalReport report;
        try (Terminal terminal = new Terminal(out)) {
            report = new Arrivals(archive, intake, archive.author())
                    .take(files.stream().map(Incoming::file).toList(), terminal);
        }
        report.findings().forEach(out::println);
        out.println(report.summary());
        out.flush();
        if (report.stopped() > 0) {
            return Main.STOPPED;
        }
        return report.refused().isEmpty() ? 0 : Main.FOUND_WRONG;
    }
}
