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
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.label.TagTable;
import tenterbook.ledger.Erased;
import tenterbook.search.PieceIndex;
import tenterbook.web.TagFacet;

@Command(
        name = "erase",
        mixinStandardHelpOptions = true,
        description =
                "Erases a person for good, as Regulation (EU) 2016/679 Art. 17 lets a person ask: the record with its history, references to it, private notes that name the person, and the PDF files of issued papers that do. Cannot be undone. Whether it must or may be done is for the law to say: tax law, for one, may ask that a sale be kept.")
final class EraseCommand implements Callable<Integer> {
    private static final String REASON = "asked for by the person, Regulation (EU) 2016/679 Art. 17";

    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--party", required = true, paramLabel = "ID", description = "The party's name in the archive.")
    private String party;

    @Option(
            names = "--confirm",
            paramLabel = "ID",
            description = "The same again, so that nobody is erased by a slip. Asked for where it is not given.")
    private String confirm;

    @Option(
            names = "--reason",
            defaultValue = REASON,
            paramLabel = "TEXT",
            description = "Kept for ever, so it names nobody (default: ${DEFAULT-VALUE}).")
    private String reason;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        Erased erased;
        try (Archive archive = folder.existing(Clock.systemUTC())) {
            if (!archive.ledger().history(Kinds.PARTY.key(party)).isEmpty()) {
                if (!confirmed(out)) {
                    out.println("The two do not agree. Nothing was erased.");
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
        out.print("This cannot be undone. Type the name of the party again to erase it: ");
        out.flush();
        String typed = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())).readLine();
        return party.equals(typed == null ? null : typed.strip());
    }

    private static void report(PrintWriter out, Erased erased) {
        out.println("Erased, and recorded as revision %d without any name:".formatted(erased.erasure()));
        out.println("  the party's record, in all its %d revisions".formatted(erased.revisions()));
        out.println("  mentions in %d older revisions of other records".formatted(erased.redacted()));
        out.println("  mentions in these records in use, which have a new revision: "
                + (erased.changed().isEmpty() ? "none" : erased.changed()));
        out.println("  %d stored PDF files: of issued papers that named the party, and such as no record names"
                .formatted(erased.files()));
        out.println("  %d unsaved forms; and the search index was built anew".formatted(erased.drafts()));
        out.println("Not erased:");
        erased.left().forEach(place -> out.println("  a name that still stands in " + place));
        out.println("  bags packed before, and other copies of the archive: find and delete them");
        out.println("  printed paper, and PDF files that were given out");
        out.println("  photographs, and words that name the person otherwise, as by a first name alone: look for them");
        out.println(
                "  what a disk keeps of overwritten blocks; and where a revision is older than format 2, its hash, by which someone who guesses every erased word exactly could see that the guess is right");
        out.flush();
    }
}
