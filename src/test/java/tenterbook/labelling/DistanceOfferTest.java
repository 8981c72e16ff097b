package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;

class DistanceOfferTest {
    private static final List<CareTest> TESTS =
            List.of(Samples.test(CareTest.Kind.HAND_WASH, 28.0, true), Samples.test(CareTest.Kind.RUB, null, false));

    private static PieceFacts facts(Studio studio, Category category) {
        Piece piece = Samples.piece("V24-005", "Heron weir", "", category, TESTS);
        PieceFacts plain = Samples.facts(piece);
        return new PieceFacts(
                studio,
                plain.piece(),
                plain.clampings(),
                plain.boards(),
                plain.cloths(),
                plain.lots(),
                plain.parties(),
                plain.photos(),
                plain.seen(),
                plain.examinations(),
                List::of,
                plain.recorded());
    }

    /** Source: Reg. (EU) 2023/988 Art. 19(a), (c), (d); Reg. (EU) 1007/2011 Art. 16(1). */
    @Test
    void anOfferInTheUnionNamesTypeIdentifierMakerContentAndWarnings() {
        DistanceOffer offer = DistanceOffer.of(facts(Samples.PARTICULAR, Category.SCARF), Market.EU);
        assertThat(offer.lines())
                .containsExactly(
                        "Heron weir, scarf, V24-005",
                        "100 % linen",
                        "Dyed in Portugal. Cloth woven in Belgium.",
                        "Oficina Valderim",
                        "Porto Sarelho, Portugal",
                        "oficina@valderim.example",
                        "Colour may rub off.");
        assertThat(offer.questions())
                .extracting(question -> question.rule().citation())
                .containsExactly("Reg. (EU) 2023/988 Art. 19(d)");
        assertThat(DistanceOffer.of(facts(Samples.PARTICULAR, null), Market.EU)
                        .questions()
                        .toString())
                .contains("What kind of piece is it?", "Art. 19(c)");
    }

    /** Source: 15 USC 70b(i): made in U.S.A., imported, or both. */
    @Test
    void anOfferInTheStatesSaysThatItIsImported() {
        DistanceOffer offer = DistanceOffer.of(facts(Samples.PARTICULAR, Category.SCARF), Market.US);
        assertThat(offer.lines()).contains("100% Linen", "Imported.");
    }

    @Test
    void withoutARuleOrWithARefusalThereIsNoText() {
        assertThat(DistanceOffer.of(facts(Samples.PARTICULAR, Category.SCARF), Market.JP)
                        .lines())
                .isEmpty();
        DistanceOffer unnamed = DistanceOffer.of(facts(Studio.UNNAMED, Category.SCARF), Market.US);
        assertThat(unnamed.lines()).isEmpty();
        assertThat(unnamed.refusals()).isNotEmpty();
    }
}
