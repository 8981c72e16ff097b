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
import tenterbook.measure.Money;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A loan or consignment schedule: pieces, parties, period, condition and terms. Terms are the maker's own words. */
final class Schedule {
    private final List<DocumentFacts> subject;
    private final Parties parties;
    private final DocumentSettings request;
    private final String today;
    private final boolean loan;

    private Schedule(List<DocumentFacts> subject, Parties parties, DocumentSettings request, String today) {
        this.subject = subject;
        this.parties = parties;
        this.request = request;
        this.today = today;
        this.loan = request.kind() == DocumentKind.LOAN_SCHEDULE;
    }

    static DocumentText of(List<DocumentFacts> subject, Parties parties, DocumentSettings request, String today) {
        Schedule schedule = new Schedule(subject, parties, request, today);
        String running = DocumentWords.joined(
                "  ·  ",
                subject.size() == 1
                        ? subject.get(0).number().value()
                        : Message.of("document.pieces", "count", subject.size()).inEnglish(),
                parties.name().length() <= 40 ? parties.name() : "");
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().toString(),
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
                        .inEnglish()));
        subject.forEach(each -> blocks.add(entry(each)));
        if (request.disclosure().values()) {
            blocks.add(DocumentWords.heading(2, "document.heading.values-agreed"));
            blocks.add(new Block.Facts(totals()));
        }
        blocks.add(DocumentWords.heading(2, "document.heading.handling-and-light"));
        blocks.add(new Block.Items(false, HANDLING));
        blocks.add(DocumentWords.note(DocumentWords.english("document.schedule.not-a-promise")));
        blocks.add(DocumentWords.note(
                LightAdvice.sources(subject.stream().map(DocumentFacts::facts).toList())));
        blocks.add(DocumentWords.heading(2, "document.heading.terms"));
        List<Block> terms = DocumentWords.paragraphs(request.agreement().terms());
        blocks.addAll(
                terms.isEmpty()
                        ? List.of(new Block.Paragraph(DocumentWords.english("document.schedule.no-terms")))
                        : terms);
        blocks.add(DocumentWords.heading(2, "document.heading.signed"));
        blocks.add(new Block.Signatures(List.of(
                DocumentWords.english(loan ? "document.schedule.sign-lender" : "document.schedule.sign-maker"),
                DocumentWords.english(loan ? "document.schedule.sign-borrower" : "document.schedule.sign-gallery"))));
        return blocks;
    }

    private static final List<String> HANDLING = List.of(
            DocumentWords.english("document.schedule.carry"),
            DocumentWords.english("document.schedule.hang"),
            DocumentWords.english("document.schedule.keep"),
            DocumentWords.english("document.schedule.do-not"));

    private List<Block.Fact> agreement() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                loan ? "document.fact.lender" : "document.fact.maker",
                subject.get(0).maker()));
        facts.add(DocumentWords.fact(loan ? "document.fact.borrower" : "document.fact.gallery", parties.name()));
        if (request.agreement().contact()) {
            facts.add(DocumentWords.fact("document.fact.contact", parties.contact()));
        }
        facts.add(DocumentWords.fact("document.fact.from", request.agreement().from()));
        facts.add(DocumentWords.fact("document.fact.until", request.agreement().until()));
        facts.add(DocumentWords.fact(
                "document.fact.insured-by", request.agreement().insurer()));
        facts.add(DocumentWords.fact("document.fact.date-of-this-schedule", today));
        return facts;
    }

    private Block.Entry entry(DocumentFacts each) {
        Piece piece = each.piece();
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact("document.fact.size", Written.capital(DocumentWords.size(piece))));
        facts.add(DocumentWords.fact("document.fact.materials", Written.capital(each.cloths())));
        facts.add(DocumentWords.fact(
                "document.fact.condition-as-recorded",
                Written.capital(condition(each.facts().condition()))));
        if (request.disclosure().values()) {
            facts.add(DocumentWords.fact(
                    loan ? "document.fact.agreed-value" : "document.fact.agreed-price",
                    DocumentWords.agreed(each.facts(), kind())));
        }
        facts.add(DocumentWords.fact("document.fact.light", LightAdvice.caution(each.facts())));
        String heading = each.number() + "  " + each.title();
        return new Block.Entry(each.photo().orElse(null), each.seen(), heading, facts);
    }

    private static String condition(Condition condition) {
        return condition.unknown() && condition.since().isEmpty()
                ? Message.of("document.schedule.examine", "condition", condition.inWords())
                        .inEnglish()
                : condition.inWords();
    }

    private EventKind kind() {
        return loan ? EventKind.LENT : EventKind.CONSIGNED;
    }

    /** Sums of what is recorded as agreed, by currency. A piece without a value is mentioned and is in no sum. */
    private List<Block.Fact> totals() {
        Map<String, BigDecimal> sums = new TreeMap<>();
        int unknown = 0;
        for (DocumentFacts each : subject) {
            Optional<Money> agreed = DocumentWords.price(each.piece(), kind());
            if (agreed.isEmpty()) {
                unknown++;
            } else {
                sums.merge(
                        agreed.get().currency().getCurrencyCode(), agreed.get().amount(), BigDecimal::add);
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
