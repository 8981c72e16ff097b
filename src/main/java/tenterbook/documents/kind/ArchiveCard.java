package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceColour;
import tenterbook.labelling.HowMade;
import tenterbook.labelling.TagColours;
import tenterbook.piece.Piece;
import tenterbook.words.Message;

/** One piece on one card: what it looks like, its number, how it was made in brief, its colours. */
final class ArchiveCard {
    private ArchiveCard() {}

    static DocumentText of(DocumentFacts subject, DocumentSettings request) {
        Piece piece = subject.piece();
        List<Block> blocks = new ArrayList<>();
        if (subject.photo().isEmpty()) {
            blocks.add(DocumentWords.note(Denial.NO_PHOTOGRAPH.unless(
                    subject.facts(),
                    () -> Denial.NO_PHOTOGRAPH_OF_TODAY.of(subject.facts()).orElseThrow())));
        } else {
            blocks.add(new Block.Photograph(subject.photo().get(), Block.Extent.WHOLE, subject.seen(), "", List.of()));
        }
        List<PieceColour> colours = TagColours.of(subject.facts());
        if (!colours.isEmpty()) {
            blocks.add(new Block.Palette(colours));
        }
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                "document.fact.number",
                piece.edition().isBlank()
                        ? subject.shown()
                        : Message.of(
                                "document.number-and-edition",
                                "number",
                                subject.shown(),
                                "edition",
                                piece.editionOnPapers())));
        facts.add(DocumentWords.fact("document.fact.finished", piece.finished()));
        facts.add(DocumentWords.fact(
                "document.fact.size",
                piece.length().recorded() || piece.width().recorded()
                        ? DocumentWords.side(piece.length()) + " × " + DocumentWords.side(piece.width())
                        : ""));
        facts.add(DocumentWords.fact("document.fact.cloth", subject.materials()));
        facts.add(DocumentWords.fact("document.fact.boards", boards(subject)));
        facts.add(DocumentWords.fact("document.fact.recipe", HowMade.words(subject.facts())));
        blocks.add(new Block.Facts(facts));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                subject.title(),
                subject.shown().value(),
                subject.facts().origin().studio(),
                List.of(new DocumentText.DocumentSection(subject.number(), blocks)));
    }

    private static String boards(DocumentFacts subject) {
        return subject.facts().boardUses().stream()
                .map(use -> use.state().isEmpty()
                        ? subject.facts().boardTitle(use.board())
                        : Message.of(
                                        "label.made.board",
                                        "board",
                                        subject.facts().boardTitle(use.board()),
                                        "state",
                                        use.state())
                                .onPaper())
                .distinct()
                .collect(Collectors.joining("; "));
    }
}
