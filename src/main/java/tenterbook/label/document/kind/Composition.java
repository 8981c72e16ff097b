package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Archive;
import tenterbook.label.document.DocumentDraft;
import tenterbook.label.document.DocumentRequest;
import tenterbook.label.document.DocumentText;
import tenterbook.label.document.VerificationCode;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.words.Refusal;

/** Composes documents from an archive: one for all pieces, or one for each, as their kind asks. */
public final class Composition {
    private Composition() {}

    /** @throws IllegalArgumentException where no piece is named */
    public static List<DocumentDraft> of(Archive archive, List<Saved<Piece>> pieces, DocumentRequest request) {
        if (pieces.isEmpty()) {
            throw Refusal.of("document.refused.no-piece", "document", request.kind());
        }
        List<Told> told = pieces.stream().map(piece -> Told.of(archive, piece)).toList();
        if (!request.kind().each()) {
            return List.of(new DocumentDraft(all(archive, told, request), pieces, request.choices()));
        }
        List<DocumentDraft> composed = new ArrayList<>();
        for (Told each : told) {
            Map<String, String> choices = new LinkedHashMap<>(request.choices());
            DocumentText text = switch (request.kind()) {
                case OBJECT_ID -> ObjectIdSheet.of(each, request);
                case PROVENANCE_CERTIFICATE -> {
                    choices.put(
                            "code", VerificationCode.of(each.newest().hash()).toString());
                    yield Certificate.of(each, request);
                }
                case BENCH_SHEET -> BenchSheet.of(each, request);
                case ARCHIVE_CARD -> ArchiveCard.of(each, request);
                case EXHIBITION_TEXT -> ExhibitionText.of(each, request);
                default -> throw new IllegalStateException("No words for " + request.kind());
            };
            composed.add(new DocumentDraft(text, List.of(each.saved()), choices));
        }
        return composed;
    }

    private static DocumentText all(Archive archive, List<Told> told, DocumentRequest request) {
        return switch (request.kind()) {
            case LOAN_SCHEDULE, CONSIGNMENT_SCHEDULE -> Schedule.of(told, Parties.of(archive, request), request);
            case INSURANCE_LIST -> InsuranceList.of(told, request);
            default -> throw new IllegalStateException("No words for " + request.kind());
        };
    }
}
