package tenterbook.app;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.sheet.ColumnPlan;
import tenterbook.exchange.sheet.ColumnProposal;
import tenterbook.exchange.sheet.ImportChoices;
import tenterbook.exchange.sheet.ImportFolder;
import tenterbook.exchange.sheet.ImportUndo;
import tenterbook.exchange.sheet.JudgedRow;
import tenterbook.exchange.sheet.SheetHead;
import tenterbook.exchange.sheet.SheetImport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.Verdict;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

@Command(name = "import", mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Parameters(index = "0", arity = "0..1", paramLabel = "FILE", descriptionKey = "file")
    private Path file;

    @Option(names = "--kind", paramLabel = "KIND")
    private String kind;

    @Option(names = "--dry-run")
    private boolean dryRun;

    @Option(names = "--keep-existing")
    private boolean keep;

    @Option(names = "--new-people")
    private boolean newPeople;

    @Option(names = "--column", paramLabel = "HEADING=FIELD")
    private List<String> columns = List.of();

    @Option(names = "--undo", paramLabel = "ID")
    private String undo;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (Archive archive = folder.existing(Clock.systemUTC());
                Terminal terminal = new Terminal(out)) {
            if (undo != null) {
                ImportUndo.Report report = ImportUndo.undo(archive, undo, 0, terminal);
                report.left().forEach(sentence -> out.println(sentence.inEnglish()));
                out.println(report.summary());
                out.flush();
                return report.left().isEmpty() ? 0 : Main.FOUND_WRONG;
            }
            if (file == null || !Files.isReadable(file)) {
                throw Refusal.of("import.no-file", "file", file == null ? "" : file);
            }
            return bringIn(archive, chosenKind(), terminal, out);
        }
    }

    /** The last sign parts heading and field, since a heading may have one. */
    private Map<String, String> chosenColumns() {
        Map<String, String> chosen = new LinkedHashMap<>();
        for (String column : columns) {
            int at = column.lastIndexOf('=');
            if (at < 0) {
                throw Refusal.of("command.import.no-sign", "column", column);
            }
            chosen.put(column.substring(0, at), column.substring(at + 1));
        }
        return chosen;
    }

    private SheetKind chosenKind() {
        return SheetKind.of(kind)
                .orElseThrow(() -> Refusal.of(
                        "command.import.kind", "kinds", List.of(SheetKind.values()), "found", String.valueOf(kind)));
    }

    private int bringIn(Archive archive, SheetKind of, Terminal terminal, PrintWriter out) {
        SheetHead head = SheetHead.of(SheetFile.of(file), of);
        ColumnProposal proposal = new ColumnProposal(of, head);
        ColumnPlan plan = proposal.plan(chosenColumns());
        for (int i = 0; i < head.headings().size(); i++) {
            int at = i;
            String path = plan.columns().stream()
                    .filter(column -> column.at() == at)
                    .map(column ->
                            of.column(column.path()).orElseThrow().label().inEnglish())
                    .findFirst()
                    .orElse(Message.of("import.not-brought-in").inEnglish());
            out.println(Message.of(
                    "import.column-becomes", "column", head.headings().get(i), "field", path));
        }
        plan.columns().stream()
                .filter(proposal::hasGaps)
                .forEach(column -> out.println(
                        Message.of("import.has-gaps", "column", head.headings().get(column.at()))));
        SheetImport sheet = new SheetImport(archive, file, of, plan, new ImportChoices(!keep, newPeople));
        SheetImport.Counts counts = sheet.judge(terminal, row -> print(row, out));
        if (!dryRun) {
            String id = ImportFolder.newId(Clock.systemUTC().instant());
            out.println(Message.of("command.import.id", "id", id));
            counts = sheet.write(id, counts.all(), terminal, row -> {});
        }
        out.println(SheetImport.summary(counts, dryRun));
        out.flush();
        return counts.of(Verdict.REFUSED) == 0 ? 0 : Main.FOUND_WRONG;
    }

    private static void print(JudgedRow<?> row, PrintWriter out) {
        row.why().forEach(why -> out.println(Message.of("import.row", "row", row.row(), "sentence", why)));
    }
}
