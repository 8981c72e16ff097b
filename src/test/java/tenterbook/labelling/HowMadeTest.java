package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.board.BoardId;
import tenterbook.facts.PieceFacts;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.FoldScheme;
import tenterbook.recipe.StepKind;

class HowMadeTest {
    @Test
    void boardsVatDyesAndMordantStandInPlainWords() {
        assertThat(words(Samples.heron()))
                .isEqualTo(
                        "Clamp-resist dyed by hand between carved boards (B02 Heron weir, state II), folded in 6 layers; woad vat, 3 dips; weld; aluminium acetate mordant.");
    }

    @Test
    void aRangeOfDipsStaysARange() {
        Quantity range = Quantity.between(6, 8, Unit.COUNT, Basis.REMEMBERED);
        assertThat(words(withVat(range, "woad"))).contains("woad vat, 6–8 dips");
        assertThat(words(withVat(new Quantity("about 6", 6.0, 6.0, Unit.COUNT, Basis.REMEMBERED, true), "woad")))
                .contains("woad vat, about 6 dips");
        assertThat(words(withVat(Samples.count(1), "woad"))).contains("woad vat, 1 dip;");
    }

    @Test
    void whatNobodyRemembersIsSaidToBeNotRecorded() {
        Quantity forgot = new Quantity("forgot", null, null, null, Basis.UNKNOWN, false);
        assertThat(words(withVat(forgot))).contains("vat Mare, number of dips not recorded");
        Clamping bare = Samples.clamping(FoldScheme.UNRECORDED, List.of(new BoardUse(new BoardId("B09"), "")));
        assertThat(words(clamped(bare)))
                .isEqualTo(
                        "Clamp-resist dyed by hand between carved boards (B09, state not recorded); dyes not recorded.");
        assertThat(words(clamped(Samples.clamping(FoldScheme.UNRECORDED, List.of()))))
                .isEqualTo("Clamp-resist dyed by hand; dyes not recorded.");
        assertThat(HowMade.words(clamped())).isEqualTo("How it was made is not recorded.");
    }

    @Test
    void aPieceDyedAgainTellsBoth() {
        Clamping first = withVat(Samples.count(4), "woad").clampings().get(0);
        assertThat(words(clamped(
                        first, withVat(Samples.count(3), "woad").clampings().get(0))))
                .contains("4 dips;")
                .contains("Dyed again between carved boards");
    }

    @Test
    void whoReadsATagIsNotShownTheMakersBoardsUnlessWanted() {
        assertThat(readers(Samples.heron(), false, 1000))
                .isEqualTo(
                        "Clamp-resist dyed by hand between carved boards, folded in 6 layers; woad vat, 3 dips; weld; aluminium acetate mordant.");
        assertThat(readers(Samples.heron(), true, 1000)).contains("B02 Heron weir, state II");
        assertThat(readers(Samples.heron(), false, 60))
                .isEqualTo("Clamp-resist dyed by hand, 6 layers; woad vat, 3 dips; weld.");
        assertThat(readers(clamped(Samples.clamping(FoldScheme.UNRECORDED, List.of())), false, 1000))
                .isEqualTo("Clamp-resist dyed by hand; dyes not recorded.");
    }

    private static String readers(PieceFacts facts, boolean boards, int most) {
        return HowMade.forReaders(facts, boards, most).replace('\u00a0', ' ');
    }

    @Test
    void localColourAndALotNobodyKnowsAreTold() {
        Clamping local = Samples.clamping(
                FoldScheme.UNRECORDED,
                List.of(new BoardUse(new BoardId("B02"), "I")),
                Samples.step(StepKind.LOCAL_COLOUR, null, "", "weld"),
                Samples.step(StepKind.BATH, null, "", "lost lot"));
        assertThat(words(clamped(local)))
                .endsWith("; weld through the holes; a further lot whose name is not recorded.");
    }

    private static PieceFacts withVat(Quantity dips, String... dyes) {
        return clamped(Samples.clamping(
                FoldScheme.UNRECORDED,
                List.of(new BoardUse(new BoardId("B02"), "II")),
                Samples.step(StepKind.DIPS, Samples.dips(dips), "Mare", dyes),
                Samples.step(StepKind.MORDANTING, null, "", "aluminium acetate")));
    }

    private static PieceFacts clamped(Clamping... clampings) {
        PieceFacts f = Samples.heron();
        return Samples.facts(
                f.piece(),
                List.copyOf(f.cloths().values()),
                List.copyOf(f.lots().values()),
                List.copyOf(f.boards().values()),
                List.of(clampings),
                List.of());
    }

    private static String words(PieceFacts facts) {
        return HowMade.words(facts).replace('\u00a0', ' ');
    }
}
