package tenterbook.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.ErasureReport;
import tenterbook.archive.Kinds;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.Erased;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;
import tenterbook.words.Message;

@Command(name = "erase", mixinStandardHelpOptions = true)
final class EraseCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--party", required = true, paramLabel = "ID")
    private String party;

    @Option(names = "--confirm", paramLabel = "ID")
    private String confirm;

    @Option(names = "--reason", paramLabel = "TEXT")
    private String reason = Message.of("erasure.usual-reason").inEnglish();

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        Erased erased;
        try (Archive archive = folder.existing(Clock.systemUTC())) {
            if (!archive.ledger().history(Kinds.PARTY.key(party)).isEmpty() && !confirmed(out)) {
                out.println(Message.of("command.erase.slip"));
                return Main.FOUND_WRONG;
            }
            erased = archive.ledger().erase(archive.author(), Kinds.PARTY, party, reason);
            try (TagTable tags = TagTable.open(archive);
                    PieceIndex index = PieceIndex.open(archive, new TagFacet(tags));
                    Terminal terminal = new Terminal(out)) {
                tags.bringUp(terminal);
                if (!index.await(Duration.ofHours(1))) {
                    out.println(Message.of("erasure.index-later"));
                }
            }
        }
        report(out, erased);
        return 0;
    }

    private boolean confirmed(PrintWriter out) throws IOException {
        if (confirm != null) {
            return confirm.equals(party);
        }
        out.print(Message.of("command.erase.confirm") + " ");
        out.flush();
        String typed = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())).readLine();
        return party.equals(typed == null ? null : typed.strip());
    }

    private static void report(PrintWriter out, Erased erased) {
        ErasureReport report = ErasureReport.of(erased);
        out.println(ErasureReport.heading(erased));
        report.done().forEach(sentence -> item(out, sentence));
        out.println(Message.of("command.erase.not-erased"));
        report.left().forEach(sentence -> item(out, sentence));
        out.flush();
    }

    private static void item(PrintWriter out, Message text) {
        out.println("  " + text);
    }
}
