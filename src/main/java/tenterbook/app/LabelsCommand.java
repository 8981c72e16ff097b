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
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.label.Arrangement;
import tenterbook.label.Coded;
import tenterbook.label.Issue;
import tenterbook.label.LabelKind;
import tenterbook.label.PrintSettings;
import tenterbook.label.SheetSize;
import tenterbook.label.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

@Command(
        name = "labels",
        mixinStandardHelpOptions = true,
        description =
                "Prints labels of pieces to a PDF at true size and keeps their text in the archive. A label that a rule forbids is refused with the reason, and nothing is written. No legal advice.")
final class LabelsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(
            names = "--kind",
            required = true,
            paramLabel = "KIND",
            description = "hang-tag, care-label, exhibition-label, shelf-tag or tube-tag.")
    private String kind;

    @Option(
            names = "--pieces",
            required = true,
            split = ",",
            paramLabel = "NUMBER",
            description = "Numbers of the pieces, with commas.")
    private List<String> pieces;

    @Option(
            names = "--market",
            required = true,
            paramLabel = "MARKET",
            description = "Where it is sold: us, eu, uk, ni, ca or jp.")
    private String market;

    @Option(
            names = "--sheet",
            defaultValue = "single",
            paramLabel = "SHEET",
            description =
                    "single, a4, letter or roll (default: ${DEFAULT-VALUE}). Sheets of one's own are chosen on the print page.")
    private String sheet;

    @Option(names = "--price", description = "Show the price on a hang tag.")
    private boolean price;

    @Option(names = "--black", description = "Print in black alone.")
    private boolean black;

    @Option(
            names = "--symbols",
            description =
                    "Show care symbols beside the words of a care label, as far as tests carry them. They are registered trademarks in many countries, and their use there needs a licence.")
    private boolean symbols;

    @Option(
            names = "--arrangement",
            paramLabel = "ARRANGEMENT",
            description = "column, hem or selvedge for a hang tag; column or two-columns for an exhibition label.")
    private String arrangement;

    @Option(names = "--copies", defaultValue = "1", paramLabel = "N", description = "Copies of each label.")
    private int copies;

    @Option(names = "--out", required = true, paramLabel = "FILE.pdf", description = "The PDF to write.")
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
                        .orElseThrow(() -> new IllegalArgumentException(
                                "There is no piece “%s” in this archive. Nothing was printed.".formatted(number))));
            }
            String maker = archive.studio().maker();
            IssuedPaper paper = Issue.print(
                    archive, found, request, Clock.systemUTC(), maker.isEmpty() ? "maker" : maker, terminal);
            Files.write(out, archive.papers().read(paper.pdf()));
            labels = found.size() * copies;
        }
        spec.commandLine()
                .getOut()
                .printf("Wrote %d labels to %s. Print at 100 %%: the bar must measure 50 mm.%n", labels, out);
        return 0;
    }

    /** Before anything is printed: what the ledger says was issued must have come out. */
    private void refuseUnwritable() {
        Path parent = out.toAbsolutePath().getParent();
        if (Files.isDirectory(out) || parent == null || !Files.isDirectory(parent) || !Files.isWritable(parent)) {
            throw new IllegalArgumentException(
                    "--out: expected a file in a folder that is there and can be written; found %s. Nothing was printed."
                            .formatted(out.toAbsolutePath()));
        }
    }

    private static <E extends Coded> E chosen(String option, String text, E[] values) {
        return Stream.of(values)
                .filter(value -> value.code().equalsIgnoreCase(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("--%s: expected one of %s, found “%s”."
                        .formatted(option, Stream.of(values).map(Coded::code).toList(), text)));
    }
}
