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

    static DocumentText of(DocumentFacts told, DocumentSettings request) {
        Piece piece = told.piece();
        List<Block> blocks = new ArrayList<>();
        if (told.photo().isEmpty()) {
            blocks.add(DocumentWords.note(Denial.NO_PHOTOGRAPH.unless(
                    told.facts(),
                    () -> Denial.NO_PHOTOGRAPH_OF_TODAY.of(told.facts()).orElseThrow())));
        } else {
            blocks.add(new Block.Photograph(told.photo().get(), Block.Extent.WHOLE, told.seen(), "", List.of()));
        }
        List<PieceColour> colours = TagColours.of(told.facts());
        if (!colours.isEmpty()) {
            blocks.add(new Block.Palette(colours));
        }
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                "document.fact.number",
                piece.edition().isBlank()
                        ? told.number()
                        : Message.of(
                                "document.number-and-edition", "number", told.number(), "edition", piece.edition())));
        facts.add(DocumentWords.fact("document.fact.finished", piece.finished()));
        facts.add(DocumentWords.fact(
                "document.fact.size",
                piece.length().recorded() || piece.width().recorded()
                        ? DocumentWords.side(piece.length()) + " × " + DocumentWords.side(piece.width())
                        : ""));
        facts.add(DocumentWords.fact("document.fact.cloth", told.cloths()));
        facts.add(DocumentWords.fact("document.fact.boards", boards(told)));
        facts.add(DocumentWords.fact("document.fact.recipe", HowMade.words(told.facts())));
        blocks.add(new Block.Facts(facts));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                told.title(),
                told.number().value(),
                told.facts().origin().studio(),
                List.of(new DocumentText.DocumentSection(told.number(), blocks)));
    }

    private static String boards(DocumentFacts told) {
        return told.facts().boardUses().stream()
                .map(use -> use.state().isEmpty()
                        ? told.facts().boardTitle(use.board())
                        : Message.of(
                                        "label.made.board",
                                        "board",
                                        told.facts().boardTitle(use.board()),
                                        "state",
                                        use.state())
                                .inEnglish())
                .distinct()
                .collect(Collectors.joining("; "));
    }
}
