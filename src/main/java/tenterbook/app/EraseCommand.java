package tenterbook.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.label.TagTable;
import tenterbook.ledger.Erased;
import tenterbook.search.PieceIndex;
import tenterbook.web.TagFacet;
import tenterbook.words.Message;

@Command(name = "erase", mixinStandardHelpOptions = true, defaultValueProvider = EraseCommand.Reason.class)
final class EraseCommand implements Callable<Integer> {
    /** The reason that is kept where none is given. */
    static final class Reason implements IDefaultValueProvider {
        @Override
        public String defaultValue(ArgSpec arg) {
            return arg.paramLabel().equals("TEXT")
                    ? Message.of("command.erase.reason").inEnglish()
                    : null;
        }
    }

    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--party", required = true, paramLabel = "ID")
    private String party;

    @Option(names = "--confirm", paramLabel = "ID")
    private String confirm;

    @Option(names = "--reason", paramLabel = "TEXT")
    private String reason;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        Erased erased;
        try (Archive archive = folder.existing(Clock.systemUTC())) {
            if (!archive.ledger().history(Kinds.PARTY.key(party)).isEmpty()) {
                if (!confirmed(out)) {
                    out.println(Message.of("command.erase.slip"));
                    return Main.FOUND_WRONG;
                }
                // Before the ledger: if the program is killed from here on, nothing derived still has the person.
                deleteAll(archive.folder().index());
                deleteAll(archive.folder().derived());
            }
            String maker = archive.studio().maker();
            erased = archive.ledger().erase(maker.isEmpty() ? "maker" : maker, Kinds.PARTY, party, reason);
            try (TagTable tags = TagTable.open(archive);
                    PieceIndex index = PieceIndex.open(archive, new TagFacet(tags));
                    Terminal terminal = new Terminal(out)) {
                tags.rebuild(terminal);
                index.reindex(terminal);
            }
        }
        report(out, erased);
        return 0;
    }

    private static void deleteAll(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> inside = Files.walk(folder)) {
                for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
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
        out.println(Message.of("command.erase.erased", "sequence", erased.erasure()));
        item(out, Message.of("command.erase.own", "count", erased.revisions()));
        item(out, Message.of("command.erase.older", "count", erased.redacted()));
        item(
                out,
                erased.changed().isEmpty()
                        ? Message.of("command.erase.in-use-none")
                        : Message.of("command.erase.in-use", "records", erased.changed()));
        item(out, Message.of("command.erase.drafts", "count", erased.drafts()));
        out.println(Message.of("command.erase.not-erased"));
        erased.left().forEach(place -> item(out, Message.of("command.erase.left", "place", place)));
        item(out, Message.of("command.erase.bags"));
        item(out, Message.of("command.erase.paper"));
        item(out, Message.of("command.erase.photographs"));
        item(out, Message.of("command.erase.disk"));
        out.flush();
    }

    private static void item(PrintWriter out, Message text) {
        out.println("  " + text);
    }
}
