package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.measure.Money;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Pieces with their prices, for visitors. What it states about tax is what the maker recorded, and nothing else. */
final class PriceList {
    private PriceList() {}

    static DocumentText of(List<DocumentFacts> subject, Occasion occasion, DocumentSettings request, String today) {
        List<Block> blocks = occasion.list(
                subject,
                today,
                List.of(
                        DocumentWords.column("document.column.piece", 2.8),
                        DocumentWords.column("document.column.materials-size", 3.6),
                        DocumentWords.numberColumn("document.column.price", 1.3)),
                each -> row(each, occasion));
        String tax = occasion.fair() == null ? "" : occasion.fair().priceStatement();
        blocks.add(
                tax.isEmpty()
                        ? DocumentWords.missing(DocumentWords.words("document.price.no-tax-statement"))
                        : new Block.Paragraph(tax));
        blocks.addAll(DocumentWords.paragraphs(request.text()));
        return DocumentWords.list(subject, request, blocks);
    }

    private static Block.TableRow row(DocumentFacts each, Occasion occasion) {
        return new Block.TableRow(
                each.photo().orElse(null),
                List.of(
                        each.shown() + "  " + each.title(),
                        Written.capital(each.materials()) + ". " + Written.capital(DocumentWords.size(each.piece())),
                        occasion.price(each).map(Money::toString).orElse(DocumentWords.notRecorded())));
    }

    static List<Written> lacking(List<DocumentFacts> subject, Occasion occasion) {
        List<Written> lacking = new ArrayList<>();
        subject.stream()
                .filter(each -> occasion.price(each).isEmpty())
                .forEach(each -> lacking.add(Message.of("document.price.lacks", "piece", each.shown())));
        return lacking;
    }
}
