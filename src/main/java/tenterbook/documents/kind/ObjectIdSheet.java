package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.board.BoardPair;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
import tenterbook.facts.PhotographScale;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.labelling.HowMade;
import tenterbook.measure.NumberWords;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A description by which a stolen or lost piece can be recognised.
 *
 * @see "Object ID, International Council of Museums, 1997: photographs, nine categories, a short description"
 */
final class ObjectIdSheet {
    private static final int MOST_PHOTOGRAPHS = 6;

    private final DocumentFacts subject;
    private final Piece piece;
    private final Function<Photo, SeenCloth> cloths;

    private ObjectIdSheet(DocumentFacts subject, Function<Photo, SeenCloth> cloths) {
        this.subject = subject;
        this.cloths = cloths;
        this.piece = subject.piece();
    }

    /** @param cloths the cloth on a photograph */
    static DocumentText of(
            DocumentFacts subject, Function<Photo, SeenCloth> cloths, DocumentSettings request, String today) {
        ObjectIdSheet sheet = new ObjectIdSheet(subject, cloths);
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().onPaper(),
                subject.running(),
                subject.house(),
                List.of(new DocumentText.DocumentSection(subject.number(), sheet.blocks(today))));
    }

    private List<Block> blocks(String today) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(1, subject.shown() + "  " + subject.title()));
        lacking().forEach(lack -> blocks.add(DocumentWords.missing(lack)));
        List<PiecePhoto> photos =
                subject.photos().stream().limit(MOST_PHOTOGRAPHS).toList();
        photos.stream().limit(1).forEach(photo -> blocks.add(measured(photo)));
        photos.stream().skip(1).forEach(photo -> blocks.add(shown(photo, Block.Extent.THIRD, caption(photo), null)));
        blocks.add(DocumentWords.heading(2, "document.heading.nine-categories"));
        blocks.add(new Block.Facts(categories()));
        blocks.add(DocumentWords.heading(2, "document.heading.description-and-particulars"));
        blocks.add(new Block.Facts(particulars(today)));
        blocks.add(DocumentWords.note(DocumentWords.words("document.object.order")));
        return blocks;
    }

    /** The first photograph, large, with a scale or with the words that none is known. */
    private Block.Photograph measured(PiecePhoto photo) {
        Photo kept = subject.facts().photos().get(photo.photo());
        PhotographScale scale =
                PhotographScale.of(piece, photo, kept, kept == null ? SeenCloth.NONE : cloths.apply(kept));
        String words = Denial.NO_SCALE
                .of(scale)
                .map(unknown -> unknown + " "
                        + Message.of("document.object.recorded-size", "size", DocumentWords.size(piece))
                                .onPaper())
                .orElseGet(() -> Message.of(
                                "document.object.scale",
                                "agreement",
                                NumberWords.percent(Math.max(0.01, scale.disagreement()), 0))
                        .onPaper());
        return shown(
                photo,
                Block.Extent.LARGE,
                DocumentWords.joined(" ", Written.stop(caption(photo)), words),
                scale.known() ? ScaleLength.bar(scale.widthMm(), piece.length().unit()) : null);
    }

    private static String caption(PiecePhoto photo) {
        return Written.capital(photo.shows()) + (photo.caption().isEmpty() ? "" : ". " + photo.caption());
    }

    private static Block.Photograph shown(
            PiecePhoto photo, Block.Extent extent, String caption, Block.@Nullable ScaleBar scale) {
        return new Block.Photograph(
                photo.photo(),
                extent,
                photo.caption().isEmpty()
                        ? Message.of("document.view", "view", photo.shows()).onPaper()
                        : photo.caption(),
                caption,
                List.of(),
                scale);
    }

    /** Missing information without which a piece is hardly recognisable. */
    private List<String> lacking() {
        List<String> lacking = new ArrayList<>();
        Denial.NO_PICTURE_TO_KNOW_IT_BY.of(subject.facts()).ifPresent(lacking::add);
        if (!piece.length().known() || !piece.width().known()) {
            lacking.add(Message.of(
                            "document.object.no-measurement",
                            "side",
                            piece.length().known() ? "width" : piece.width().known() ? "length" : "both")
                    .onPaper());
        }
        Denial.NO_DISTINGUISHING_FEATURE.of(subject.facts()).ifPresent(lacking::add);
        return lacking;
    }

    private List<Block.Fact> categories() {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                "document.fact.type-of-object",
                Message.of(
                        "document.object.type",
                        "kind",
                        piece.category() == null
                                ? Message.of("document.object.kind-not-recorded")
                                : piece.category())));
        facts.add(DocumentWords.fact(
                "document.fact.materials-and-techniques",
                Written.capital(subject.materials()) + ". " + HowMade.words(subject.facts())));
        facts.add(DocumentWords.fact(
                "document.fact.measurements",
                piece.mass().recorded()
                        ? Message.of(
                                "document.object.size-and-mass",
                                "size",
                                Written.capital(DocumentWords.size(piece)),
                                "mass",
                                DocumentWords.side(piece.mass()))
                        : Written.capital(DocumentWords.size(piece))));
        facts.add(DocumentWords.fact("document.fact.inscriptions-and-markings", inscriptions()));
        facts.add(DocumentWords.fact(
                "document.fact.distinguishing-features",
                Written.capital(subject.facts().features())));
        facts.add(DocumentWords.fact(
                "document.fact.title", DocumentWords.joined(" / ", piece.title(), piece.otherTitle())));
        facts.add(DocumentWords.fact(
                "document.fact.subject",
                subject.facts().boardsUsed().stream()
                        .filter(board -> !board.image().isEmpty())
                        .map(BoardPair::image)
                        .distinct()
                        .collect(Collectors.joining(", "))));
        facts.add(DocumentWords.fact("document.fact.date-or-period", piece.finished()));
        facts.add(DocumentWords.fact("document.fact.maker", subject.maker()));
        return facts;
    }

    /** As recorded, and a photograph of the label where there is one. */
    private String inscriptions() {
        String recorded = piece.particulars().inscriptions();
        return DocumentWords.joined(" ", Written.stop(recorded), photographed());
    }

    private String photographed() {
        return piece.photos().stream()
                .filter(photo ->
                        photo.role() == PhotoRole.PAPER && !photo.caption().isEmpty())
                .map(photo -> Message.of("document.object.as-photographed", "caption", photo.caption())
                        .onPaper())
                .collect(Collectors.joining(" "));
    }

    private String description() {
        String kind = piece.category() == null
                ? DocumentWords.words("document.object.piece")
                : piece.category().onPaper();
        PieceFacts facts = subject.facts();
        String colours = facts.namedColours().named().stream()
                .map(PieceColour::called)
                .distinct()
                .collect(Collectors.joining(", "));
        return Message.of(
                        "document.object.description",
                        "kind",
                        Written.capital(kind),
                        "cloths",
                        subject.materials(),
                        "size",
                        DocumentWords.size(piece),
                        "colours",
                        Denial.NO_COLOURS.unless(
                                facts,
                                () -> Message.of(
                                                facts.namedColours().now()
                                                        ? "document.object.colours"
                                                        : "document.object.colours-before",
                                                "colours",
                                                colours)
                                        .onPaper()),
                        "place",
                        Denial.orElse(facts.origin().place(), Denial.NO_PLACE_OF_MAKING))
                .onPaper();
    }

    private List<Block.Fact> particulars(String today) {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact("document.fact.short-description", description()));
        facts.add(DocumentWords.fact("document.fact.inventory-number", subject.shown()));
        if (!piece.edition().isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.edition", piece.editionOnPapers()));
        }
        facts.add(DocumentWords.fact(
                "document.fact.place-of-origin", subject.facts().origin().place()));
        facts.add(DocumentWords.fact(
                "document.fact.related-objects",
                Denial.orElse(
                        subject.kin().stream()
                                .map(Object::toString)
                                .reduce((before, next) -> before + ", " + next)
                                .map(kin -> Message.of("document.object.same-clamping", "pieces", kin)
                                        .onPaper())
                                .orElse(""),
                        Denial.NO_KIN)));
        facts.add(DocumentWords.fact(
                "document.fact.written-material",
                Message.of("document.object.record", "version", subject.saved().version())));
        facts.add(DocumentWords.fact("document.fact.date-documented", today));
        return facts;
    }
}
