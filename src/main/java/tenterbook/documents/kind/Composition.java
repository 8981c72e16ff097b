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

    /** The day of a document, and the same as it is printed. */
    record Today(LocalDate day, String written) {}

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
            return List.of(all(archive, subject, pieces, request, new Today(today, date)));
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
            Today today) {
        return switch (request.kind()) {
            case LOAN_SCHEDULE, CONSIGNMENT_SCHEDULE -> {
                AgreedTerms agreed = AgreedTerms.of(archive, subject, request);
                yield new DocumentDraft(
                        Schedule.of(subject, agreed, request, today.written()),
                        pieces,
                        request,
                        DocumentOrigin.NONE,
                        agreed.lacking(subject, request));
            }
            case INSURANCE_LIST ->
                new DocumentDraft(
                        InsuranceList.of(subject, request, today.written()),
                        pieces,
                        request,
                        DocumentOrigin.NONE,
                        List.of());
            case PRICE_LIST, PACKING_LIST, CUSTOMS_LIST, FAIR_CHECKLIST ->
                goods(archive, subject, pieces, request, today);
            default -> throw new IllegalStateException("No words for " + request.kind());
        };
    }

    private static DocumentDraft goods(
            Archive archive,
            List<DocumentFacts> subject,
            List<Saved<Piece>> pieces,
            DocumentSettings request,
            Today today) {
        Occasion occasion = Occasion.of(archive, request);
        DocumentText text;
        List<Written> lacking = List.of();
        switch (request.kind()) {
            case PRICE_LIST -> {
                text = PriceList.of(subject, occasion, request, today.written());
                lacking = PriceList.lacking(subject, occasion);
            }
            case PACKING_LIST -> text = PackingList.of(subject, occasion, request, today.written());
            case CUSTOMS_LIST -> {
                text = CustomsList.of(subject, occasion, request, today.written());
                lacking = CustomsList.lacking(subject, occasion);
            }
            default -> {
                text = FairChecklist.of(archive, subject, occasion, request, today);
                lacking = FairChecklist.lacking(occasion);
            }
        }
        return new DocumentDraft(text, pieces, request, DocumentOrigin.NONE, lacking);
    }
}
