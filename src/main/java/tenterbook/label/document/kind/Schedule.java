package tenterbook.label.document.kind;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tenterbook.facts.Condition;
import tenterbook.label.document.Block;
import tenterbook.label.document.DocumentKind;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentText;
import tenterbook.measure.Money;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;

/** What is lent or consigned, to whom, for how long, in what state and on what terms. Terms are the maker's own words. */
final class Schedule {
    private final List<Told> told;
    private final Parties parties;
    private final DocumentSettings request;
    private final LocalDate today;
    private final boolean loan;

    private Schedule(List<Told> told, Parties parties, DocumentSettings request, LocalDate today) {
        this.told = told;
        this.parties = parties;
        this.request = request;
        this.today = today;
        this.loan = request.kind() == DocumentKind.LOAN_SCHEDULE;
    }

    static DocumentText of(List<Told> told, Parties parties, DocumentSettings request, LocalDate today) {
        Schedule schedule = new Schedule(told, parties, request, today);
        String running = Say.joined(
                "  ·  ",
                told.size() == 1 ? told.get(0).number().value() : told.size() + " pieces",
                parties.name().length() <= 40 ? parties.name() : "");
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().toString(),
                running,
                told.get(0).house(),
                List.of(new DocumentText.Part(null, schedule.blocks())));
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Facts(agreement()));
        blocks.add(new Block.Heading(2, told.size() == 1 ? "The piece" : "The pieces"));
        told.forEach(each -> blocks.add(entry(each)));
        if (request.disclosure().values()) {
            blocks.add(new Block.Heading(2, "Values agreed"));
            blocks.add(new Block.Facts(totals()));
        }
        blocks.add(new Block.Heading(2, "Handling and light"));
        blocks.add(new Block.Items(false, HANDLING));
        blocks.add(
                Say.note(
                        "These are common practice, not a promise of safety; the borrower’s own rules and a conservator’s advice go before them."));
        blocks.add(Say.note(Light.sources(told.stream().map(Told::facts).toList())));
        blocks.add(new Block.Heading(2, "Terms"));
        List<Block> terms = Say.paragraphs(request.agreement().terms());
        blocks.addAll(terms.isEmpty() ? List.of(new Block.Paragraph("No terms were entered.")) : terms);
        blocks.add(new Block.Heading(2, "Signed"));
        blocks.add(new Block.Signatures(List.of(
                (loan ? "For the lender" : "For the maker") + ": name, place, date",
                (loan ? "For the borrower" : "For the gallery") + ": name, place, date")));
        return blocks;
    }

    private static final List<String> HANDLING = List.of(
            "Carry each piece flat on a board or rolled, with clean dry hands, never by one edge.",
            "No pins, tape or adhesive on the cloth; hang it as it came, or ask.",
            "Keep it dry, away from food, moths, heaters and windows; light only as stated with each piece, and no ultraviolet.",
            "Do not wash, iron, mend or unfold against the old creases without asking. Report any change at once, with a photograph.");

    private List<Block.Fact> agreement() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Say.fact(loan ? "Lender" : "Maker", told.get(0).maker()));
        facts.add(Say.fact(loan ? "Borrower" : "Gallery", parties.name()));
        if (request.agreement().contact()) {
            facts.add(Say.fact("Contact", parties.contact()));
        }
        facts.add(Say.fact("From", request.agreement().from()));
        facts.add(Say.fact("Until", request.agreement().until()));
        facts.add(Say.fact("Insured by", request.agreement().insurer()));
        facts.add(Say.fact("Date of this schedule", Say.day(today)));
        return facts;
    }

    private Block.Entry entry(Told each) {
        Piece piece = each.piece();
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Say.fact("Size", Say.capital(Say.size(piece))));
        facts.add(Say.fact("Materials", Say.capital(each.cloths())));
        facts.add(Say.fact(
                "Condition as recorded", Say.capital(condition(each.facts().condition()))));
        if (request.disclosure().values()) {
            facts.add(Say.fact(loan ? "Agreed value" : "Agreed price", Say.agreed(each.facts(), kind())));
        }
        facts.add(Say.fact("Light", Light.caution(each.facts())));
        String heading = each.number() + "  " + each.title();
        return new Block.Entry(each.photo().orElse(null), each.seen(), heading, facts);
    }

    private static String condition(Condition condition) {
        return condition.inWords()
                + (condition.unknown() && condition.since().isEmpty() ? "; examine it before it leaves" : "");
    }

    private EventKind kind() {
        return loan ? EventKind.LENT : EventKind.CONSIGNED;
    }

    /** Sums of what is recorded as agreed, by currency. A piece without is told, and counts in none. */
    private List<Block.Fact> totals() {
        Map<String, BigDecimal> sums = new TreeMap<>();
        int unknown = 0;
        for (Told each : told) {
            Optional<Money> agreed = Say.price(each.piece(), kind());
            if (agreed.isEmpty()) {
                unknown++;
            } else {
                sums.merge(
                        agreed.get().currency().getCurrencyCode(), agreed.get().amount(), BigDecimal::add);
            }
        }
        List<Block.Fact> facts = new ArrayList<>();
        sums.forEach(
                (code, sum) -> facts.add(Say.fact("Total in " + code, new Money(sum, Currency.getInstance(code)))));
        if (unknown > 0) {
            facts.add(Say.fact(
                    "In no total",
                    unknown == 1
                            ? "1 piece has no agreed value recorded"
                            : unknown + " pieces have no agreed value recorded"));
        }
        return facts;
    }
}
