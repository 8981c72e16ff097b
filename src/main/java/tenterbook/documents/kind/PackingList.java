package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Particulars;
import tenterbook.words.Listing;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Pieces as they are packed, box by box where boxes are recorded, with room to write where they are not. */
final class PackingList {
    private PackingList() {}

    static DocumentText of(List<DocumentFacts> subject, Occasion occasion, DocumentSettings request, String today) {
        List<Block> blocks = occasion.list(
                subject,
                today,
                List.of(
                        DocumentWords.column("document.column.piece", 2.2),
                        DocumentWords.column("document.column.size-packed", 2.4),
                        DocumentWords.numberColumn("document.column.weight", 1.1),
                        DocumentWords.column("document.column.how-to-pack", 3.0),
                        DocumentWords.column("document.column.box", 0.8)),
                each -> row(each, occasion));
        blocks.add(DocumentWords.heading(2, "document.heading.boxes-and-totals"));
        blocks.add(new Block.Facts(totals(subject, occasion)));
        blocks.add(DocumentWords.blank("document.blank.boxes", 3));
        blocks.addAll(DocumentWords.paragraphs(request.text()));
        return DocumentWords.list(subject, request, blocks);
    }

    private static Block.TableRow row(DocumentFacts each, Occasion occasion) {
        Particulars more = each.piece().particulars();
        String packed = more.packedSize();
        String how = DocumentWords.joined("; ", more.packing(), more.hanging());
        return new Block.TableRow(
                each.photo().orElse(null),
                List.of(
                        each.shown() + "  " + each.title(),
                        Message.of(
                                        "document.packing.size",
                                        "open",
                                        Written.capital(DocumentWords.size(each.piece())),
                                        "packed",
                                        packed.isEmpty() ? DocumentWords.notRecorded() : packed)
                                .onPaper(),
                        weight(each),
                        how.isEmpty() ? DocumentWords.notRecorded() : Written.capital(how),
                        occasion.box(each)));
    }

    static String weight(DocumentFacts each) {
        return each.piece().mass().recorded()
                ? QuantityWords.entered(each.piece().mass())
                : DocumentWords.notRecorded();
    }

    private static List<Block.Fact> totals(List<DocumentFacts> subject, Occasion occasion) {
        Map<String, List<DocumentFacts>> boxes = new LinkedHashMap<>();
        subject.forEach(each -> boxes.computeIfAbsent(occasion.box(each), box -> new ArrayList<>())
                .add(each));
        List<Block.Fact> facts = new ArrayList<>();
        boxes.forEach((box, inside) -> {
            if (!box.isEmpty()) {
                facts.add(DocumentWords.fact(
                        Message.of("document.packing.box", "box", box),
                        Message.of(
                                "document.packing.inside",
                                "pieces",
                                Listing.and(inside.stream()
                                        .map(DocumentFacts::number)
                                        .toList()),
                                "weight",
                                GoodsTotals.weight(inside))));
            }
        });
        List<DocumentFacts> unboxed = boxes.getOrDefault("", List.of());
        if (!facts.isEmpty() && !unboxed.isEmpty()) {
            facts.add(DocumentWords.fact(
                    "document.fact.in-no-box",
                    Listing.and(unboxed.stream().map(DocumentFacts::number).toList())
                            .onPaper()));
        }
        facts.add(DocumentWords.fact("document.fact.pieces", subject.size()));
        facts.add(DocumentWords.fact("document.fact.weight-of-pieces", GoodsTotals.weight(subject)));
        return facts;
    }
}
