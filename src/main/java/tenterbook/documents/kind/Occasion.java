package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.ledger.Saved;
import tenterbook.measure.Money;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.fair.CustomsPurpose;
import tenterbook.piece.fair.Fair;
import tenterbook.piece.fair.FairPiece;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * What a list of goods is for: a fair, an agreement, or neither.
 *
 * @param party with whom the agreement is, as printed; empty where nobody is named
 * @param purpose for customs, as chosen, else of the fair; null where not known
 */
record Occasion(
        @Nullable Fair fair,
        @Nullable Agreement agreement,
        String party,
        @Nullable CustomsPurpose purpose) {

    /** @throws IllegalArgumentException where the fair or agreement chosen is not in the archive */
    static Occasion of(Archive archive, DocumentSettings request) {
        String id = request.fair();
        Fair fair = id.isEmpty()
                ? null
                : archive.ledger()
                        .find(Kinds.FAIR, id)
                        .map(Saved::record)
                        .orElseThrow(() -> Refusal.of("document.refused.no-fair", "id", id));
        String agreed = fair == null ? request.agreement().id() : "";
        Agreement agreement = agreed.isEmpty()
                ? null
                : archive.ledger()
                        .find(Kinds.AGREEMENT, agreed)
                        .map(Saved::record)
                        .orElseThrow(() -> Refusal.of("document.schedule.no-agreement", "id", agreed));
        PartyId with = agreement == null ? null : agreement.party();
        String party = with == null
                ? ""
                : archive.party(with.value()).map(Party::title).orElse(with.value());
        return new Occasion(fair, agreement, party, purpose(request, fair));
    }

    /** How a list of its pieces begins: the occasion, then a table of them. */
    List<Block> list(
            List<DocumentFacts> subject,
            String today,
            List<Block.Column> columns,
            Function<DocumentFacts, Block.TableRow> row) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Facts(facts(subject.size(), today)));
        blocks.add(new Block.Table(columns, subject.stream().map(row).toList()));
        return blocks;
    }

    private static @Nullable CustomsPurpose purpose(DocumentSettings request, @Nullable Fair fair) {
        String typed = request.shipment() == null ? "" : request.shipment().purpose();
        return Stream.of(CustomsPurpose.values())
                .filter(each -> each.code().equals(typed))
                .findFirst()
                .orElse(fair == null ? null : fair.purpose());
    }

    /** What it is for, where and when, as far as a fair or an agreement says; then how many pieces, and the day. */
    List<Block.Fact> facts(int pieces, String today) {
        List<Block.Fact> facts = new ArrayList<>();
        if (fair != null) {
            facts.add(DocumentWords.named(Written.capital(fair.kind().onPaper()), fair.name()));
            facts.add(
                    DocumentWords.fact("document.fact.place", DocumentWords.joined(", ", fair.place(), fair.soldIn())));
            facts.add(DocumentWords.fact("document.fact.from", fair.from()));
            facts.add(DocumentWords.fact("document.fact.until", fair.until()));
        } else if (agreement != null) {
            facts.add(DocumentWords.named(Written.capital(agreement.kind().onPaper()), agreement.title()));
            facts.add(DocumentWords.fact("document.fact.with", party));
            facts.add(DocumentWords.fact("document.fact.from", agreement.from()));
            facts.add(DocumentWords.fact("document.fact.until", agreement.until()));
        }
        facts.add(DocumentWords.fact("document.fact.pieces", pieces));
        facts.add(DocumentWords.fact("document.fact.as-recorded-on", today));
        return facts;
    }

    /** The price that a consignment agrees, else the price asked; empty where neither is recorded. */
    Optional<Money> price(DocumentFacts each) {
        Optional<Money> agreed =
                agreement != null && agreement.kind() == AgreementKind.CONSIGNMENT ? agreed(each) : Optional.empty();
        return agreed.or(() -> Optional.ofNullable(each.piece().price()));
    }

    /** What the agreement states as value or price, else the price asked. */
    Optional<Money> value(DocumentFacts each) {
        return agreed(each).or(() -> Optional.ofNullable(each.piece().price()));
    }

    private Optional<Money> agreed(DocumentFacts each) {
        return agreement == null
                ? Optional.empty()
                : agreement.piece(each.number()).map(AgreedPiece::value);
    }

    /** The box it travels in; empty where not recorded. */
    String box(DocumentFacts each) {
        return fair == null ? "" : fair.piece(each.number()).map(FairPiece::box).orElse("");
    }
}
