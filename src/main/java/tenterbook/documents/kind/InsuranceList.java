package tenterbook.documents.kind;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Whereabouts;
import tenterbook.measure.Money;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Pieces with their values and where they are, for an insurer. Pieces without a value are in no sum. */
final class InsuranceList {
    private InsuranceList() {}

    static DocumentText of(List<DocumentFacts> subject, DocumentSettings request, String today) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Facts(List.of(
                DocumentWords.fact("document.fact.owner", subject.get(0).maker()),
                DocumentWords.fact(
                        "document.fact.insured-by", request.agreement().insurer()),
                DocumentWords.fact("document.fact.pieces", subject.size()),
                DocumentWords.fact("document.fact.as-recorded-on", today))));
        blocks.add(new Block.Table(
                List.of(
                        DocumentWords.column("document.column.piece", 2.6),
                        DocumentWords.column("document.column.size-materials-condition", 3.4),
                        DocumentWords.column("document.column.where-it-is", 2.2),
                        DocumentWords.numberColumn("document.column.value", 1.3)),
                subject.stream().map(each -> row(each, request)).toList()));
        blocks.add(DocumentWords.heading(2, "document.heading.totals"));
        blocks.add(new Block.Facts(totals(subject)));
        blocks.add(DocumentWords.note(DocumentWords.words("document.insurance.values")));
        DocumentWords.paragraphs(request.text()).forEach(blocks::add);
        blocks.add(new Block.Signatures(List.of(DocumentWords.words("document.insurance.sign"))));
        return DocumentWords.list(subject, request, blocks);
    }

    private static Block.TableRow row(DocumentFacts each, DocumentSettings request) {
        Piece piece = each.piece();
        return new Block.TableRow(
                each.photo().orElse(null),
                List.of(
                        each.shown() + " " + each.title(),
                        Written.capital(DocumentWords.size(piece)) + ". " + Written.capital(each.materials()) + ". "
                                + Written.stop(
                                        Written.capital(each.facts().condition().inWords())),
                        where(each, request),
                        piece.price() == null
                                ? DocumentWords.notRecorded()
                                : piece.price().onPaper()));
    }

    /** Its status; the place and the holder are named only where that was chosen. */
    private static String where(DocumentFacts each, DocumentSettings request) {
        Piece piece = each.piece();
        Whereabouts now = each.facts().whereabouts();
        String disagreement = now.disagreement().map(Written::onPaper).orElse("");
        String status = disagreement.isEmpty() ? now.statusInWords() : now.statusInWords() + " (" + disagreement + ")";
        if (!request.disclosure().names()) {
            return status.isEmpty() ? DocumentWords.notRecorded() : status;
        }
        String holder = now.holder()
                .map(id -> each.named(id, request.disclosure().buyers()))
                .orElse("");
        String where =
                DocumentWords.joined(", ", status, piece.place().startsWith(holder) ? "" : holder, piece.place());
        return where.isEmpty() ? DocumentWords.notRecorded() : where;
    }

    private static List<Block.Fact> totals(List<DocumentFacts> subject) {
        Map<String, BigDecimal> sums = new TreeMap<>();
        Map<String, Integer> counts = new TreeMap<>();
        long unknown = 0;
        for (DocumentFacts each : subject) {
            Money price = each.piece().price();
            if (price == null) {
                unknown++;
            } else {
                sums.merge(price.currency().getCurrencyCode(), price.amount(), BigDecimal::add);
                counts.merge(price.currency().getCurrencyCode(), 1, Integer::sum);
            }
        }
        List<Block.Fact> facts = new ArrayList<>();
        sums.forEach((code, sum) -> facts.add(DocumentWords.fact(
                Message.of("document.total", "currency", code),
                Message.of(
                        "document.insurance.sum",
                        "sum",
                        new Money(sum, Currency.getInstance(code)),
                        "pieces",
                        Message.of("document.pieces", "count", counts.get(code))))));
        if (unknown > 0) {
            facts.add(DocumentWords.fact(
                    "document.fact.in-no-total", Message.of("document.insurance.unknown", "count", unknown)));
        }
        return facts;
    }
}
