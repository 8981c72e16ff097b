package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.archive.arrival.Arrivals;
import tenterbook.archive.arrival.PhotoFolder;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;

@Command(name = "photos", mixinStandardHelpOptions = true)
final class PhotosCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--from", required = true, paramLabel = "DIR")
    private Path from;

    @Option(names = "--within")
    private boolean within;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        try (Archive archive = folder.existing(Clock.systemUTC())) {
            List<Path> files = PhotoFolder.files(
                    from.toAbsolutePath().toString(), within, archive.folder().root());
            Originals originals = new Originals(archive.folder().photos());
            PhotoIntake intake =
                    new PhotoIntake(originals, new Previews(archive.folder().previews(), originals), archive.cloths());
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
}
