package tenterbook.documents.kind;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.VerificationCode;
import tenterbook.ledger.Saved;
import tenterbook.measure.DateWords;
import tenterbook.piece.Piece;
import tenterbook.words.PaperLanguage;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Composes documents from an archive, in the language of their settings: one for all pieces, or one for each, as their kind asks. */
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
        return PaperLanguage.write(
                archive.conventions().in(request.language()), () -> composed(archive, pieces, request, today));
    }

    private static List<DocumentDraft> composed(
            Archive archive, List<Saved<Piece>> pieces, DocumentSettings request, LocalDate today) {
        String date = DateWords.day(today).onPaper();
        List<DocumentFacts> subject =
                pieces.stream().map(piece -> DocumentFacts.of(archive, piece)).toList();
        if (!request.kind().each()) {
            return List.of(all(archive, subject, pieces, request, date));
        }
        List<DocumentDraft> composed = new ArrayList<>();
        for (DocumentFacts each : subject) {
            DocumentOrigin origin = DocumentOrigin.NONE;
            DocumentText text = switch (request.kind()) {
                case OBJECT_ID -> ObjectIdSheet.of(each, archive.cloths()::of, request, date);
                case PROVENANCE_CERTIFICATE -> {
                    origin = DocumentOrigin.of(VerificationCode.of(each.newest().hash()));
                    yield Certificate.of(each, request);
                }
                case BENCH_SHEET -> BenchSheet.of(each, request);
                case ARCHIVE_CARD -> ArchiveCard.of(each, request);
                case EXHIBITION_TEXT -> ExhibitionText.of(each, request);
                default -> throw new IllegalStateException("No words for " + request.kind());
            };
            List<Written> lacking =
                    request.kind() == DocumentKind.PROVENANCE_CERTIFICATE ? Certificate.lacking(each) : List.of();
            composed.add(new DocumentDraft(text, List.of(each.saved()), request, origin, lacking));
        }
        return composed;
    }

    private static DocumentDraft all(
            Archive archive,
            List<DocumentFacts> subject,
            List<Saved<Piece>> pieces,
            DocumentSettings request,
            String today) {
        return switch (request.kind()) {
            case LOAN_SCHEDULE, CONSIGNMENT_SCHEDULE -> {
                AgreedTerms agreed = AgreedTerms.of(archive, subject, request);
                yield new DocumentDraft(
                        Schedule.of(subject, agreed, request, today),
                        pieces,
                        request,
                        DocumentOrigin.NONE,
                        agreed.lacking(subject, request));
            }
            case INSURANCE_LIST ->
                new DocumentDraft(
                        InsuranceList.of(subject, request, today), pieces, request, DocumentOrigin.NONE, List.of());
            default -> throw new IllegalStateException("No words for " + request.kind());
        };
    }
}
