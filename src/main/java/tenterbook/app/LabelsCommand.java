package tenterbook.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

@Command(name = "labels", mixinStandardHelpOptions = true)
final class LabelsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--kind", required = true, paramLabel = "KIND")
    private String kind;

    @Option(names = "--pieces", required = true, split = ",", paramLabel = "NUMBER")
    private List<String> pieces;

    @Option(names = "--market", required = true, paramLabel = "MARKET")
    private String market;

    @Option(names = "--sheet", defaultValue = "single", paramLabel = "SHEET")
    private String sheet;

    @Option(names = "--price")
    private boolean price;

    @Option(names = "--black")
    private boolean black;

    @Option(names = "--symbols")
    private boolean symbols;

    @Option(names = "--arrangement", paramLabel = "ARRANGEMENT")
    private String arrangement;

    @Option(names = "--copies", defaultValue = "1", paramLabel = "N")
    private int copies;

    @Option(names = "--out", required = true, paramLabel = "FILE.pdf")
    private Path out;

    @Override
    public Integer call() throws IOException {
        PrintSettings request = PrintSettings.of(
                        chosen("kind", kind, LabelKind.values()), chosen("market", market, Market.values()))
                .on(chosen("sheet", sheet, SheetSize.values()));
        if (arrangement != null) {
            request = request.arranged(chosen("arrangement", arrangement, Arrangement.values()));
        }
        request = request.times(copies);
        refuseUnwritable();
        request = price ? request.withPrice() : request;
        request = black ? request.inBlack() : request;
        request = symbols ? request.withCareSymbols() : request;
        int labels;
        try (Archive archive = folder.existing(Clock.systemUTC());
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            List<Saved<Piece>> found = new ArrayList<>();
            for (String number : pieces) {
                found.add(archive.ledger()
                        .find(Kinds.PIECE, number.strip())
                        .orElseThrow(() -> Refusal.of("command.labels.no-piece", "piece", number)));
            }
            IssuedPaper paper =
                    LabelIssuer.print(archive, found, request, Clock.systemUTC(), archive.author(), terminal);
            Files.write(out, archive.papers().read(paper.pdf()));
            labels = found.size() * copies;
        }
        spec.commandLine().getOut().println(Message.of("command.labels.wrote", "count", labels, "file", out));
        return 0;
    }

    /** Checked before anything is printed: what the ledger records as issued must have been written. */
    private void refuseUnwritable() {
        Path parent = out.toAbsolutePath().getParent();
        if (Files.isDirectory(out) || parent == null || !Files.isDirectory(parent) || !Files.isWritable(parent)) {
            throw Refusal.of("command.labels.not-writable", "file", out.toAbsolutePath());
        }
    }

    private static <E extends CodedChoice> E chosen(String option, String text, E[] values) {
        return Stream.of(values)
                .filter(value -> value.code().equalsIgnoreCase(text))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "command.labels.choice",
                        "option",
                        option,
                        "choices",
                        Stream.of(values).map(CodedChoice::code).toList(),
                        "found",
                        text));
    }
}
