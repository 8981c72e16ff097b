package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Origin;
import tenterbook.material.Cloth;
import tenterbook.measure.Money;
import tenterbook.piece.Piece;
import tenterbook.piece.label.PieceComponent;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Goods for a customs office: description, fibres, origin, weight and value. Nothing is guessed; a commodity code stands only
 * where the maker entered one. The columns are common practice.
 */
final class CustomsList {
    private CustomsList() {}

    static DocumentText of(List<DocumentFacts> subject, Occasion occasion, DocumentSettings request, String today) {
        List<Block> blocks = new ArrayList<>();
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact("document.fact.maker", subject.get(0).maker()));
        facts.addAll(occasion.facts(subject.size(), today));
        facts.add(DocumentWords.fact(
                "document.fact.purpose",
                occasion.purpose() == null
                        ? ""
                        : Written.capital(occasion.purpose().onPaper())));
        blocks.add(new Block.Facts(facts));
        blocks.add(new Block.Table(
                List.of(
                        DocumentWords.column("document.column.description", 2.6),
                        DocumentWords.column("document.column.fibres", 2.0),
                        DocumentWords.column("document.column.origin", 1.7),
                        DocumentWords.numberColumn("document.column.weight", 1.0),
                        DocumentWords.numberColumn("document.column.value", 1.2),
                        DocumentWords.column("document.column.commodity-code", 1.3)),
                subject.stream().map(each -> row(each, occasion)).toList()));
        blocks.add(DocumentWords.heading(2, "document.heading.totals"));
        List<Block.Fact> totals = new ArrayList<>(GoodsTotals.values(subject, occasion::value));
        totals.add(DocumentWords.fact("document.fact.weight-of-pieces", GoodsTotals.weight(subject)));
        blocks.add(new Block.Facts(totals));
        blocks.add(DocumentWords.note(DocumentWords.words("document.customs.values")));
        blocks.add(DocumentWords.note(DocumentWords.words("document.customs.office-decides")));
        blocks.addAll(DocumentWords.paragraphs(request.text()));
        blocks.add(new Block.Signatures(List.of(DocumentWords.words("document.customs.sign"))));
        return DocumentWords.list(subject, request, blocks);
    }

    private static Block.TableRow row(DocumentFacts each, Occasion occasion) {
        return new Block.TableRow(
                null,
                List.of(
                        description(each),
                        fibres(each),
                        origin(each),
                        PackingList.weight(each),
                        occasion.value(each).map(Money::toString).orElse(DocumentWords.notRecorded()),
                        each.piece().particulars().commodityCode()));
    }

    private static String description(DocumentFacts each) {
        Piece piece = each.piece();
        String kind = piece.category() == null
                ? DocumentWords.words("document.customs.textile")
                : Message.of("document.customs.dyed", "kind", piece.category()).onPaper();
        return DocumentWords.joined(
                ", ",
                each.shown() + "  " + kind,
                "“" + each.title() + "”",
                piece.length().recorded() || piece.width().recorded()
                        ? DocumentWords.size(piece)
                        : DocumentWords.words("document.size-not-recorded"),
                piece.trims());
    }

    /** Of the cloth, then of each further part, as in '100 % silk; lining: 100 % cotton'. */
    private static String fibres(DocumentFacts each) {
        Stream<String> cloths = each.facts().cloth().cloths().stream()
                .map(Cloth::content)
                .map(content -> content.isEmpty() ? DocumentWords.notRecorded() : new Joined(", ", content).onPaper())
                .distinct();
        Stream<String> parts = each.piece().label().components().stream()
                .map(part ->
                        part.name() + ": " + (part.fibres().isEmpty() ? DocumentWords.notRecorded() : words(part)));
        String all = Stream.concat(cloths, parts).collect(Collectors.joining("; "));
        return all.isEmpty() ? DocumentWords.notRecorded() : all;
    }

    private static String words(PieceComponent part) {
        return new Joined(", ", part.fibres()).onPaper();
    }

    private static boolean fibresKnown(DocumentFacts each) {
        List<Cloth> cloths = each.facts().cloth().cloths();
        return !cloths.isEmpty()
                && cloths.stream().noneMatch(cloth -> cloth.content().isEmpty())
                && each.piece().label().components().stream()
                        .noneMatch(part -> part.fibres().isEmpty());
    }

    /** Both countries that may count, since which of them is the origin is for the customs office. */
    private static String origin(DocumentFacts each) {
        Origin origin = each.facts().origin();
        String woven = each.facts().cloth().cloths().stream()
                .map(cloth -> cloth.wovenIn().isEmpty() ? DocumentWords.notRecorded() : cloth.wovenIn())
                .distinct()
                .collect(Collectors.joining(", "));
        return Message.of(
                        "document.customs.origin",
                        "dyed",
                        origin.dyedIn().isEmpty() ? DocumentWords.notRecorded() : origin.dyedIn(),
                        "woven",
                        woven.isEmpty() ? DocumentWords.notRecorded() : woven)
                .onPaper();
    }

    static List<Written> lacking(List<DocumentFacts> subject, Occasion occasion) {
        List<Written> lacking = new ArrayList<>();
        if (occasion.purpose() == null) {
            lacking.add(Message.of("document.customs.lacks.purpose"));
        }
        for (DocumentFacts each : subject) {
            List<String> missing = new ArrayList<>();
            if (!fibresKnown(each)) {
                missing.add("fibres");
            }
            if (each.facts().origin().dyedIn().isEmpty()) {
                missing.add("origin");
            }
            if (!each.piece().mass().known()) {
                missing.add("weight");
            }
            if (occasion.value(each).isEmpty()) {
                missing.add("value");
            }
            missing.forEach(fact -> lacking.add(Message.of("document.customs.lacks." + fact, "piece", each.shown())));
        }
        return lacking;
    }
}
