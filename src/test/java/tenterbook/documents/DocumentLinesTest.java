package tenterbook.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.ledger.revision.Canonical;
import tenterbook.piece.PieceNumber;

class DocumentLinesTest {
    private static IssuedPaper paper(DocumentText text) {
        DocumentLines lines = DocumentLines.of(text);
        return new IssuedPaper(
                "paper-1",
                text.kind(),
                "",
                text.template(),
                List.of(),
                Instant.EPOCH,
                lines.pieces().entrySet().stream()
                        .map(each -> new IssuedPaper.Issued(each.getKey(), 1, each.getValue(), "", List.of()))
                        .toList(),
                null,
                lines.words(),
                "",
                null);
    }

    @Test
    void everyBlockComesBackFromTheLedgersJsonAsItWas() throws Exception {
        DocumentText text = DocumentSamples.everyBlock();
        IssuedPaper kept = IssuedPaperRecord.ISSUED_PAPER.fromText(
                Canonical.json(IssuedPaperRecord.ISSUED_PAPER.toJson(paper(text))));
        assertThat(DocumentLines.read(kept)).isEqualTo(text);
    }

    @Test
    void theWordsOfOnePieceStandWithThatPiece() {
        IssuedPaper paper = paper(DocumentSamples.everyBlock());
        assertThat(paper.pieces()).hasSize(1);
        assertThat(paper.pieces().get(0).text()).contains("hem slightly frayed").doesNotContain("€450");
        assertThat(paper.words())
                .extracting(IssuedPaper.Line::text)
                .contains("€450")
                .doesNotContain("hem slightly frayed");
    }

    @Test
    void aMarkKeptBeforeAreasWereDrawnIsStillAPoint() {
        List<IssuedPaper.Line> old = List.of(
                new IssuedPaper.Line("photograph", "", "ab".repeat(32) + " whole"),
                new IssuedPaper.Line("mark", "a stain", "1 0.38 0.42"));
        Block.Photograph photo = (Block.Photograph) BlockLines.read(old).get(0);
        assertThat(photo.marks()).containsExactly(new Block.Mark(1, 0.38, 0.42, "a stain", null, null));
        assertThat(BlockLines.of(photo)).contains(old.get(1));
    }

    @Test
    void anAreaThatEndsBeforeItBeginsOrHasOneSideOnlyIsRefused() {
        assertThatThrownBy(() -> new Block.Mark(1, 0.5, 0.5, "", 0.4, 0.6)).hasMessageContaining("0.4, 0.6");
        assertThatThrownBy(() -> new Block.Mark(1, 0.5, 0.5, "", 0.6, null)).hasMessageContaining("lower right");
        assertThatThrownBy(() -> new Block.Mark(1, 0.5, 0.5, "", 0.6, 1.1)).hasMessageContaining("1.1");
    }

    @Test
    void aLineOfAnUnknownKindIsRefusedByName() {
        IssuedPaper good = paper(DocumentSamples.everyBlock());
        List<IssuedPaper.Line> words = new java.util.ArrayList<>(good.words());
        words.add(new IssuedPaper.Line("hologram", "?", ""));
        IssuedPaper odd = new IssuedPaper(
                good.id(),
                good.kind(),
                "",
                "",
                List.of(),
                good.issuedAt(),
                good.pieces(),
                good.settings(),
                words,
                "",
                null);
        assertThatThrownBy(() -> DocumentLines.read(odd)).hasMessageContaining("hologram");
    }

    @Test
    void aPieceIsToldInOnePartOnly() {
        DocumentText.DocumentSection part = new DocumentText.DocumentSection(new PieceNumber("V24-001"), List.of());
        assertThatThrownBy(() -> new DocumentText("k", "k 1", "t", "", "", List.of(part, part)))
                .hasMessageContaining("V24-001");
    }

    @Property(tries = 200)
    void anyTextsInAnyBlocksComeBack(@ForAll("blocks") List<Block> blocks) throws Exception {
        DocumentText text = new DocumentText(
                "trial",
                "trial 1",
                "Title",
                "",
                "",
                List.of(
                        new DocumentText.DocumentSection(null, blocks),
                        new DocumentText.DocumentSection(new PieceNumber("V24-001"), blocks),
                        new DocumentText.DocumentSection(null, blocks)));
        IssuedPaper kept = IssuedPaperRecord.ISSUED_PAPER.fromText(
                Canonical.json(IssuedPaperRecord.ISSUED_PAPER.toJson(paper(text))));
        assertThat(DocumentLines.read(kept)).isEqualTo(text);
    }

    @Provide
    Arbitrary<List<Block>> blocks() {
        Arbitrary<String> text = Arbitraries.strings().ofMaxLength(40);
        Arbitrary<List<Block.Fact>> facts =
                Combinators.combine(text, text).as(Block.Fact::new).list().ofMaxSize(4);
        return Arbitraries.<Block>oneOf(
                        Combinators.combine(Arbitraries.integers().between(1, 3), text)
                                .as(Block.Heading::new),
                        text.map(Block.Paragraph::new),
                        Combinators.combine(Arbitraries.of(Block.Manner.values()), text)
                                .as(Block.Note::new),
                        Combinators.combine(
                                        Arbitraries.of(true, false), text.list().ofMaxSize(4))
                                .as(Block.Items::new),
                        facts.map(Block.Facts::new),
                        Combinators.combine(text, text, facts)
                                .as((a, b, c) -> new Block.Entry(DocumentSamples.ACROSS, a, b, c)),
                        Combinators.combine(text, text, Arbitraries.doubles().between(0, 1))
                                .as((a, b, d) -> new Block.Photograph(
                                        DocumentSamples.UPRIGHT,
                                        Block.Extent.THIRD,
                                        a,
                                        b,
                                        List.of(
                                                new Block.Mark(3, d, d, a, null, null),
                                                new Block.Mark(4, d / 2, d / 3, b, d, (1 + d) / 2)))),
                        text.map(t -> new Block.Code(t, t, t)),
                        Combinators.combine(text, Arbitraries.integers().between(1, 3), Arbitraries.of(true, false))
                                .as((t, columns, turned) -> new Block.Layers(
                                        columns,
                                        Collections.nCopies(columns * 2, new Block.Panel(7, turned, !turned, turned)),
                                        t)),
                        Combinators.combine(text, Arbitraries.doubles().between(1, 400))
                                .as((t, d) ->
                                        new Block.Holes(d, 2 * d, List.of(new Block.HolePlace(t, d / 2, d / 3)), t)),
                        text.list().ofMaxSize(3).map(Block.Signatures::new))
                .list()
                .ofMaxSize(6);
    }
}
