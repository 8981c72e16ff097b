package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.List;
import tenterbook.facts.Denial;
import tenterbook.label.HowMade;
import tenterbook.label.document.Block;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentText;
import tenterbook.piece.Piece;
import tenterbook.words.Written;

/** The longer text beside a piece on a wall: what it is, the maker's words, how it was made. */
final class ExhibitionText {
    private ExhibitionText() {}

    static DocumentText of(Told told, DocumentSettings request) {
        Piece piece = told.piece();
        String maker = told.facts().origin().maker();
        List<Block> blocks = new ArrayList<>();
        if (!piece.otherTitle().isEmpty()) {
            blocks.add(new Block.Heading(3, piece.otherTitle()));
        }
        Say.paragraphs(request.text()).forEach(blocks::add);
        blocks.add(new Block.Paragraph(HowMade.words(told.facts())));
        String cloths = String.join(", ", told.facts().cloth().names());
        blocks.add(Say.note(Say.joined(
                "  ·  ",
                Written.capital(Denial.NO_CLOTH.unless(
                        told.facts(), () -> cloths.isEmpty() ? Say.english("document.exhibition.cloth") : cloths)),
                Say.size(piece).equals(Say.NOT_RECORDED)
                        ? Say.english("document.size-not-recorded")
                        : Say.side(piece.length()) + " × " + Say.side(piece.width()),
                piece.finished().year() == null
                        ? piece.finished().recorded()
                                ? piece.finished().toString()
                                : Say.english("document.date-not-recorded")
                        : piece.finished().year().toString(),
                told.number().value())));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                piece.title().isEmpty() ? Say.english("document.title-not-recorded") : piece.title(),
                "",
                maker.isEmpty() ? told.house() : maker,
                List.of(new DocumentText.Part(told.number(), blocks)));
    }
}
