package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
import tenterbook.labelling.HowMade;
import tenterbook.piece.Piece;
import tenterbook.words.Written;

/** The longer text beside a piece on a wall: what it is, the maker's words, how it was made. */
final class ExhibitionText {
    private ExhibitionText() {}

    static DocumentText of(DocumentFacts subject, DocumentSettings request) {
        Piece piece = subject.piece();
        String maker = subject.facts().origin().maker();
        List<Block> blocks = new ArrayList<>();
        if (!piece.otherTitle().isEmpty()) {
            blocks.add(new Block.Heading(3, piece.otherTitle()));
        }
        DocumentWords.paragraphs(request.text()).forEach(blocks::add);
        blocks.add(new Block.Paragraph(HowMade.forReaders(subject.facts(), false, Integer.MAX_VALUE)));
        String cloths = String.join(", ", subject.facts().cloth().names());
        blocks.add(DocumentWords.note(DocumentWords.joined(
                "  ·  ",
                Written.capital(Denial.NO_CLOTH.unless(
                        subject.facts(),
                        () -> cloths.isEmpty() ? DocumentWords.words("document.exhibition.cloth") : cloths)),
                DocumentWords.size(piece).equals(DocumentWords.notRecorded())
                        ? DocumentWords.words("document.size-not-recorded")
                        : DocumentWords.side(piece.length()) + " × " + DocumentWords.side(piece.width()),
                piece.finished().year() == null
                        ? piece.finished().recorded()
                                ? piece.finished().onPaper()
                                : DocumentWords.words("document.date-not-recorded")
                        : piece.finished().year().toString(),
                subject.shown().value())));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                piece.title().isEmpty() ? DocumentWords.words("document.title-not-recorded") : piece.title(),
                "",
                maker.isEmpty() ? subject.house() : maker,
                List.of(new DocumentText.DocumentSection(subject.number(), blocks)));
    }
}
