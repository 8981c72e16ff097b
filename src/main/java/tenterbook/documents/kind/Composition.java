package tenterbook.documents.kind;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.VerificationCode;
import tenterbook.ledger.Saved;
import tenterbook.measure.DateWords;
import tenterbook.piece.Piece;
import tenterbook.words.Refusal;

/** Composes documents from an archive: one for all pieces, or one for each, as their kind asks. */
public final class Composition {
    private Composition() {}

    /**
     * @param today the day they are made, printed as their date
     * @throws IllegalArgumentException where no piece is named
     */
    public static List<DocumentDraft> of(
            Archive archive, List<Saved<Piece>> pieces, DocumentSettings request, LocalDate today) {
        if (pieces.isEmpty()) {
            throw Refusal.of("document.refused.no-piece", "document", request.kind());
        }
        String date = DateWords.day(today).in(archive.conventions());
        List<DocumentFacts> subject =
                pieces.stream().map(piece -> DocumentFacts.of(archive, piece)).toList();
        if (!request.kind().each()) {
            return List.of(
                    new DocumentDraft(all(archive, subject, request, date), pieces, request, DocumentOrigin.NONE));
        }
        List<DocumentDraft> composed = new ArrayList<>();
        for (DocumentFacts each : subject) {
            DocumentOrigin origin = DocumentOrigin.NONE;
            DocumentText text = switch (request.kind()) {
                case OBJECT_ID -> ObjectIdSheet.of(each, request, date);
                case PROVENANCE_CERTIFICATE -> {
                    origin = DocumentOrigin.of(VerificationCode.of(each.newest().hash()));
                    yield Certificate.of(each, request);
                }
                case BENCH_SHEET -> BenchSheet.of(each, request);
                case ARCHIVE_CARD -> ArchiveCard.of(each, request);
                case EXHIBITION_TEXT -> ExhibitionText.of(each, request);
                default -> throw new IllegalStateException("No words for " + request.kind());
            };
            composed.add(new DocumentDraft(text, List.of(each.saved()), request, origin));
        }
        return composed;
    }

    private static DocumentText all(
            Archive archive, List<DocumentFacts> subject, DocumentSettings request, String today) {
        return switch (request.kind()) {
            case LOAN_SCHEDULE, CONSIGNMENT_SCHEDULE ->
                Schedule.of(subject, Parties.of(archive, request), request, today);
            case INSURANCE_LIST -> InsuranceList.of(subject, request, today);
            default -> throw new IllegalStateException("No words for " + request.kind());
        };
    }
}
