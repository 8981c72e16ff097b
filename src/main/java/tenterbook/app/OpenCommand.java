package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.app.open.ArchivePlace;
import tenterbook.app.open.BrowserWindow;
import tenterbook.app.start.FreePort;
import tenterbook.app.start.StopSignal;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.web.server.FirstStartPage;
import tenterbook.web.studio.CloseButton;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** What a double click starts: the archive in a browser, served here or by the copy of the program that runs already. */
@Command(name = "open", mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--archive", paramLabel = "DIR")
    private @Nullable Path named;

    @Option(names = "--port", paramLabel = "N", defaultValue = FreePort.USUAL)
    private int port;

    @Option(names = "--no-browser")
    private boolean noBrowser;

    @Override
    public Integer call() throws Exception {
        PrintWriter out = spec.commandLine().getOut();
        ArchivePlace place = ArchivePlace.ofThisComputer();
        Path folder = (named == null ? place.folder() : named).toAbsolutePath().normalize();
        try (StopSignal stop = new StopSignal();
                ArchiveOpening opening = new ArchiveOpening(place, port, out, stop::stop)) {
            Written problem;
            try {
                if (LedgerFile.in(folder).begun()) {
                    String address = opening.open(folder);
                    out.println(Message.of(
                            opening.servesItself() ? "command.serve.serves" : "command.open.already",
                            "folder",
                            folder));
                    show(address, out);
                    if (opening.servesItself()) {
                        stop.await();
                    }
                    return 0;
                }
                problem = whyNone(folder, place);
            } catch (ArchiveProblem e) {
                problem = e.explanation();
            }
            ask(folder, problem, opening, stop);
        }
        return 0;
    }

    private void ask(Path folder, @Nullable Written problem, ArchiveOpening opening, StopSignal stop)
            throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        FirstStartPage.Choice choice = (typed, beginning) -> {
            String address = opening.choose(typed, beginning);
            if (!opening.servesItself()) {
                CloseButton.endSoon(stop::stop);
            }
            return address;
        };
        try (FirstStartPage page = FirstStartPage.show(folder, problem, choice, stop::stop)) {
            out.println(problem == null ? Message.of("command.open.first", "folder", folder) : problem);
            show(page.address(), out);
            stop.await();
        }
    }

    /** Why there is no archive in the folder; null on a first start. */
    private @Nullable Written whyNone(Path folder, ArchivePlace place) throws IOException {
        if (!LedgerFile.in(folder).folderUnused()) {
            return Message.of("first-start.other-things", "folder", folder);
        }
        return named == null && place.remembered().isPresent()
                ? Message.of("first-start.gone", "folder", folder)
                : null;
    }

    private void show(String address, PrintWriter out) {
        out.println(Message.of("command.serve.open", "address", address));
        out.flush();
        if (!noBrowser && !BrowserWindow.show(address)) {
            out.println(Message.of("command.open.no-browser"));
            out.flush();
        }
    }
}
