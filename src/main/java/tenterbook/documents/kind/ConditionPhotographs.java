package tenterbook.documents.kind;

import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.Block;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The photographs of a condition report with their numbered marks. */
final class ConditionPhotographs {
    private final Archive archive;
    private final Examination examination;

    ConditionPhotographs(Archive archive, Examination examination) {
        this.archive = archive;
        this.examination = examination;
    }

    /** Adds marked photographs large, each with its legend, then the others side by side. */
    void addTo(List<Block> blocks) {
        if (examination.photos().isEmpty()) {
            return;
        }
        blocks.add(DocumentWords.heading(2, "document.heading.photographs"));
        List<Block.Photograph> shown =
                examination.photos().stream().map(this::photograph).toList();
        shown.stream().filter(photo -> !photo.marks().isEmpty()).forEach(blocks::add);
        shown.stream().filter(photo -> photo.marks().isEmpty()).forEach(blocks::add);
    }

    private Block.Photograph photograph(ExaminedPhoto photo) {
        List<Block.Mark> marks = examination.observations().stream()
                .flatMap(seen -> seen.marks().stream()
                        .filter(mark -> mark.photo().equals(photo.photo()))
                        .map(mark -> new Block.Mark(
                                seen.number(),
                                mark.left(),
                                mark.top(),
                                DocumentWords.joined(
                                        ", ",
                                        seen.what(),
                                        seen.gone() ? DocumentWords.words("document.condition.gone") : seen.size(),
                                        mark.area() ? DocumentWords.words("document.condition.over-an-area") : ""),
                                mark.right(),
                                mark.bottom())))
                .toList();
        return new Block.Photograph(
                photo.photo(),
                marks.isEmpty() ? Block.Extent.HALF : Block.Extent.WHOLE,
                photo.caption().isEmpty()
                        ? Message.of("document.view", "view", photo.shows()).onPaper()
                        : photo.caption(),
                caption(photo),
                marks);
    }

    private String caption(ExaminedPhoto photo) {
        String taken = archive.ledger()
                .find(Kinds.PHOTO, photo.photo().hex())
                .map(Saved::record)
                .map(Photo::taken)
                .filter(text -> text.length() >= 10)
                .map(text -> Message.of("document.condition.taken", "day", text.substring(0, 10))
                        .onPaper())
                .orElse(DocumentWords.words("document.condition.taken-not-recorded"));
        return DocumentWords.joined(
                " ", Written.stop(Written.capital(photo.shows())), Written.stop(photo.caption()), taken);
    }
}
