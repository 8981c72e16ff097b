package tenterbook.documents.kind;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Condition;
import tenterbook.facts.Denial;
import tenterbook.labelling.LightAdvice;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Piece;
import tenterbook.words.Listing;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A loan or consignment schedule: pieces, parties, period, condition and terms. Terms are the maker's own words. */
final class Schedule {
    /** So many pieces are shown beside the signatures by picture. */
    private static final int FEW = 4;

    private final List<DocumentFacts> subject;
    private final AgreedTerms agreed;
    private final DocumentSettings request;
    private final String today;
    private final boolean loan;

    private Schedule(List<DocumentFacts> subject, AgreedTerms agreed, DocumentSettings request, String today) {
        this.subject = subject;
        this.agreed = agreed;
        this.request = request;
        this.today = today;
        this.loan = request.kind() == DocumentKind.LOAN_SCHEDULE;
    }

    static DocumentText of(List<DocumentFacts> subject, AgreedTerms agreed, DocumentSettings request, String today) {
        Schedule schedule = new Schedule(subject, agreed, request, today);
        String running = DocumentWords.joined(
                "  ·  ",
                subject.size() == 1
                        ? subject.get(0).shown().value()
                        : Message.of("document.pieces", "count", subject.size()).onPaper(),
                agreed.name().length() <= 40 ? agreed.name() : "");
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().onPaper(),
                running,
                subject.get(0).house(),
                List.of(new DocumentText.DocumentSection(null, schedule.blocks())));
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Facts(agreement()));
        blocks.add(new Block.Heading(
                2,
                Message.of("document.heading.the-pieces", "count", subject.size())
                        .onPaper()));
        subject.forEach(each -> blocks.add(entry(each)));
        if (request.disclosure().values()) {
            blocks.add(DocumentWords.heading(2, "document.heading.values-agreed"));
            blocks.add(new Block.Facts(totals()));
        }
        blocks.add(DocumentWords.heading(2, "document.heading.handling-and-light"));
        blocks.add(new Block.Items(false, handling()));
        blocks.add(DocumentWords.note(
                Message.of("document.schedule.not-a-promise", "loan", loan).onPaper()));
        blocks.add(DocumentWords.note(
                LightAdvice.sources(subject.stream().map(DocumentFacts::facts).toList())));
        blocks.add(DocumentWords.heading(2, "document.heading.terms"));
        List<Block> terms = DocumentWords.paragraphs(agreed.terms());
        blocks.addAll(
                terms.isEmpty()
                        ? List.of(new Block.Paragraph(DocumentWords.words("document.schedule.no-terms")))
                        : terms);
        blocks.add(DocumentWords.heading(2, "document.heading.signed"));
        blocks.add(signedFor());
        blocks.add(new Block.Signatures(List.of(
                DocumentWords.words(loan ? "document.schedule.sign-lender" : "document.schedule.sign-maker"),
                DocumentWords.words(loan ? "document.schedule.sign-borrower" : "document.schedule.sign-gallery"))));
        return blocks;
    }

    /** A page of signatures shows by itself what is signed: with pictures where they are few. */
    private Block signedFor() {
        if (subject.size() > FEW) {
            return new Block.Paragraph(Message.of(
                            "document.schedule.signed-for",
                            "pieces",
                            Listing.and(
                                    subject.stream().map(DocumentFacts::number).toList()))
                    .onPaper());
        }
        return new Block.Table(
                List.of(DocumentWords.column("document.column.piece", 1)),
                subject.stream()
                        .map(each -> new Block.TableRow(
                                each.photo().orElse(null), List.of(each.shown() + "  " + each.title())))
                        .toList());
    }

    private static List<String> handling() {
        return List.of(
                DocumentWords.words("document.schedule.carry"),
                DocumentWords.words("document.schedule.hang"),
                DocumentWords.words("document.schedule.keep"),
                DocumentWords.words("document.schedule.do-not"));
    }

    private List<Block.Fact> agreement() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                loan ? "document.fact.lender" : "document.fact.maker",
                subject.get(0).maker()));
        facts.add(DocumentWords.fact(loan ? "document.fact.borrower" : "document.fact.gallery", agreed.name()));
        if (request.agreement().contact()) {
            facts.add(DocumentWords.fact("document.fact.contact", agreed.contact()));
        }
        facts.add(DocumentWords.fact("document.fact.from", agreed.from()));
        facts.add(DocumentWords.fact("document.fact.until", agreed.until()));
        facts.add(DocumentWords.fact("document.fact.insured-by", agreed.insurer()));
        agreed.commission().ifPresent(share -> facts.add(DocumentWords.fact("document.fact.commission", kept(share))));
        if (!agreed.creditLine().isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.credit-line", agreed.creditLine()));
        }
        facts.add(DocumentWords.fact("document.fact.date-of-this-schedule", today));
        return facts;
    }

    /** As in '40 % of the price of each sale, …'; a text that is no share stays as it is. */
    private static Written kept(Quantity share) {
        return share.known()
                ? Message.of("document.schedule.commission", "share", QuantityWords.withAssumedUnit(share))
                : share;
    }

    private Block.Entry entry(DocumentFacts each) {
        Piece piece = each.piece();
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact("document.fact.size", Written.capital(DocumentWords.size(piece))));
        facts.add(DocumentWords.fact("document.fact.materials", Written.capital(each.materials())));
        recorded(facts, "document.fact.their-number", agreed.theirNumber(each));
        facts.add(DocumentWords.fact(
                "document.fact.condition-as-recorded",
                Written.capital(condition(each.facts().condition()))));
        if (request.disclosure().values()) {
            facts.add(DocumentWords.fact(
                    loan ? "document.fact.agreed-value" : "document.fact.agreed-price", agreed(each)));
            agreed.floor(each).ifPresent(lowest -> facts.add(DocumentWords.fact("document.fact.floor", lowest)));
        }
        facts.add(DocumentWords.fact("document.fact.light", LightAdvice.caution(each.facts())));
        recorded(facts, "document.fact.hanging", piece.particulars().hanging());
        recorded(facts, "document.fact.packing", piece.particulars().packing());
        recorded(facts, "document.fact.treatments", piece.particulars().treatments());
        recorded(facts, "document.fact.residues", piece.particulars().residues());
        recorded(facts, "document.fact.credit-line", piece.particulars().creditLine());
        recorded(facts, "document.fact.image-rights", piece.particulars().imageRights());
        String heading = each.shown() + "  " + each.title();
        return new Block.Entry(each.photo().orElse(null), each.seen(), heading, facts);
    }

    private static void recorded(List<Block.Fact> facts, String label, String text) {
        if (!text.isEmpty()) {
            facts.add(DocumentWords.fact(label, text));
        }
    }

    private static String condition(Condition condition) {
        return condition.unknown() && condition.since().isEmpty()
                ? Message.of("document.schedule.examine", "condition", condition.inWords())
                        .onPaper()
                : condition.inWords();
    }

    /** What is agreed with this party; else the asking price, marked as such. */
    private String agreed(DocumentFacts each) {
        Optional<Money> value = agreed.value(each);
        Money asked = each.piece().price();
        if (value.isPresent() || asked == null) {
            return value.map(Money::onPaper).orElse(DocumentWords.notRecorded());
        }
        return Message.of(
                        "document.asked",
                        "price",
                        asked,
                        "denial",
                        Denial.NOTHING_AGREED.unless(
                                each.facts(), () -> DocumentWords.words("document.agreed-otherwise")))
                .onPaper();
    }

    /** Sums of what is recorded as agreed, by currency. A piece without a value is mentioned and is in no sum. */
    private List<Block.Fact> totals() {
        Map<String, BigDecimal> sums = new TreeMap<>();
        int unknown = 0;
        for (DocumentFacts each : subject) {
            Optional<Money> value = agreed.value(each);
            if (value.isEmpty()) {
                unknown++;
            } else {
                sums.merge(value.get().currency().getCurrencyCode(), value.get().amount(), BigDecimal::add);
            }
        }
        List<Block.Fact> facts = new ArrayList<>();
        sums.forEach((code, sum) -> facts.add(DocumentWords.fact(
                Message.of("document.total", "currency", code), new Money(sum, Currency.getInstance(code)))));
        if (unknown > 0) {
            facts.add(DocumentWords.fact(
                    "document.fact.in-no-total", Message.of("document.schedule.unknown", "count", unknown)));
        }
        return facts;
    }
}
