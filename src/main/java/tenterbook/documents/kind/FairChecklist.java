package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.labelling.issue.FairNeed;
import tenterbook.labelling.issue.HangTagStatus;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.fair.Fair;
import tenterbook.piece.fair.FairKind;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** What is still to be done before a fair: the maker's own lines, then what each piece lacks, with room to tick off. */
final class FairChecklist {
    private FairChecklist() {}

    static DocumentText of(
            Archive archive,
            List<DocumentFacts> subject,
            Occasion occasion,
            DocumentSettings request,
            Composition.Today today) {
        List<Block> blocks = new ArrayList<>();
        Fair fair = occasion.fair();
        List<Block.Fact> facts = new ArrayList<>(occasion.facts(subject.size(), today.written()));
        if (fair == null) {
            facts.add(0, DocumentWords.named(Written.capital(FairKind.FAIR.onPaper()), ""));
        }
        blocks.add(new Block.Facts(facts));
        if (fair != null && !fair.tasks().isEmpty()) {
            blocks.add(DocumentWords.heading(2, "document.heading.to-do"));
            blocks.add(new Block.Table(
                    List.of(
                            DocumentWords.column("document.column.to-do", 6),
                            DocumentWords.column("document.column.done", 1)),
                    fair.tasks().stream()
                            .map(task -> new Block.TableRow(
                                    null,
                                    List.of(
                                            task.text(),
                                            task.done() ? DocumentWords.words("document.checklist.done") : "")))
                            .toList()));
        }
        blocks.add(new Block.Heading(
                2,
                Message.of("document.heading.the-pieces", "count", subject.size())
                        .onPaper()));
        blocks.add(new Block.Table(
                List.of(
                        DocumentWords.column("document.column.piece", 2.4),
                        DocumentWords.column("document.column.still-to-do", 3.6),
                        DocumentWords.column("document.column.packed", 0.9),
                        DocumentWords.column("document.column.back", 0.9)),
                subject.stream()
                        .map(each -> new Block.TableRow(
                                each.photo().orElse(null),
                                List.of(each.shown() + "  " + each.title(), needs(archive, each, fair, today), "", "")))
                        .toList()));
        blocks.addAll(DocumentWords.paragraphs(request.text()));
        return DocumentWords.list(subject, request, blocks);
    }

    private static String needs(Archive archive, DocumentFacts each, @Nullable Fair fair, Composition.Today today) {
        if (fair == null) {
            return "";
        }
        Market market = FairNeed.market(fair).orElse(null);
        List<Written> needs = new ArrayList<>();
        FairNeed.of(
                        each.facts(),
                        fair,
                        market == null ? null : HangTagStatus.of(archive, each.facts(), market),
                        today.day())
                .forEach(need -> needs.add(need.sentence()));
        return Written.capital(new Joined("; ", needs).onPaper());
    }

    static List<Written> lacking(Occasion occasion) {
        return occasion.fair() == null ? List.of(Message.of("document.checklist.lacks-fair")) : List.of();
    }
}
