package tenterbook.documents.kind;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.exchange.RestoredSample;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Previews;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/** The sample archive, restored, and documents of it. */
final class SampleStudioDocuments implements AutoCloseable {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-10T10:00:00Z"), ZoneOffset.UTC);
    static final LocalDate TODAY = LocalDate.of(2026, 1, 10);

    final Archive archive;
    final PhotoSource photographs;

    SampleStudioDocuments(Path folder) throws IOException {
        Path place = folder.resolve("archive");
        RestoredSample.copyTo(place);
        archive = Archive.open(place, CLOCK);
        photographs = PhotoSource.of(new Previews(
                archive.folder().previews(), new Originals(archive.folder().photos())));
    }

    List<Saved<Piece>> pieces(String... numbers) {
        return Arrays.stream(numbers)
                .map(number -> archive.ledger().find(Kinds.PIECE, number).orElseThrow())
                .toList();
    }

    /** A document as the studio would make it: the pieces that suit it, its choices and its typed words. */
    List<DocumentDraft> drafts(DocumentKind kind) {
        return Composition.of(archive, pieces(numbers(kind)), request(kind), TODAY);
    }

    static String[] numbers(DocumentKind kind) {
        return switch (kind) {
            case LOAN_SCHEDULE -> new String[] {"V24-013", "V24-004", "V24-018"};
            case PRICE_LIST, PACKING_LIST, CUSTOMS_LIST, FAIR_CHECKLIST ->
                new String[] {"V24-002", "V24-010", "V24-012"};
            case CONSIGNMENT_SCHEDULE -> new String[] {"V24-003", "V24-010"};
            case INSURANCE_LIST ->
                new String[] {
                    "V24-001", "V24-002", "V24-003", "V24-004", "V24-005", "V24-006", "V24-007", "V24-008", "V24-009",
                    "V24-010", "V24-011", "V24-012", "V24-013", "V24-014", "V24-015", "V24-016", "V24-017", "V24-018"
                };
            case ARCHIVE_CARD -> new String[] {"V24-010"};
            case EXHIBITION_TEXT -> new String[] {"V24-007"};
            case PROVENANCE_CERTIFICATE -> new String[] {"V24-003"};
            default -> new String[] {"V24-004"};
        };
    }

    static DocumentSettings request(DocumentKind kind) {
        DocumentSettings.Agreement agreed = switch (kind) {
            case LOAN_SCHEDULE ->
                new DocumentSettings.Agreement(
                        "Museu do Sarelho",
                        false,
                        "12 January 2026",
                        "30 April 2026",
                        "the borrower, from wall to wall",
                        "The pieces hang together in the north room.\nNo photograph is published without asking.\n\nThe borrower returns them in the rolls they came in.",
                        "");
            case CONSIGNMENT_SCHEDULE ->
                new DocumentSettings.Agreement(
                        "sala-vermia",
                        true,
                        "1 February 2026",
                        "three months",
                        "",
                        "Sixty parts of the price are the maker’s and forty the gallery’s, paid within thirty days of a sale.",
                        "");
            default -> null;
        };
        String text = kind == DocumentKind.EXHIBITION_TEXT
                ? "Nine swifts are cut into two cherry boards, once and once again in mirror image. Where the boards meet, the silk is pressed so tightly that no dye can enter; where they are hollow the vat flows through. What hangs here is the shadow of a piece of wood."
                : "";
        return new DocumentSettings(kind, null, agreed, new DocumentSettings.Disclosure(true, true, false), text);
    }

    byte[] pdf(DocumentKind kind) throws IOException {
        return pdf(drafts(kind), request(kind));
    }

    byte[] pdf(List<DocumentDraft> drafts, DocumentSettings request) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentPaper.pdf(drafts.stream().map(DocumentDraft::text).toList(), request, photographs, out, CLOCK);
        return out.toByteArray();
    }

    @Override
    public void close() {
        archive.close();
    }
}
