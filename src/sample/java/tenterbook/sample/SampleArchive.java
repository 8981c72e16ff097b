package tenterbook.sample;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.AgreementRecord;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.exchange.Bag;
import tenterbook.exchange.Pack;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;

/**
 * The sample studio's whole archive, written through the same doors as anybody's: photographs are taken in, records saved
 * one after the other at the times when their makers would have saved them, and everything is packed into a bag.
 */
public final class SampleArchive {
    private static final Instant PACKED = Instant.parse("2025-01-07T09:00:00Z");
    private final Archive archive;
    private final SampleClock clock;
    private final Darkroom darkroom;
    private final SampleCalibrations calibrations;
    private final Progress progress;

    private SampleArchive(Archive archive, SampleClock clock, Progress progress) throws IOException {
        Originals originals = new Originals(archive.folder().photos());
        Previews previews = new Previews(archive.folder().previews(), originals);
        this.archive = archive;
        this.clock = clock;
        this.darkroom = new Darkroom(new PhotoIntake(originals, previews, archive.cloths()), previews, progress);
        this.calibrations = new SampleCalibrations(archive, clock, originals);
        this.progress = progress;
    }

    /**
     * Draws, fills and packs; takes some minutes.
     *
     * @param bag a folder that is not there yet, in one that is
     * @param workFolder missing or empty; the filled archive stays in it
     * @throws IllegalArgumentException if either folder is not so; nothing was written
     * @throws Progress.Cancelled if asked to stop; what is in {@code workFolder} is then of no use
     */
    public static Bag build(Path bag, Path workFolder, Progress progress) {
        refuseUnfit(bag, workFolder);
        SampleClock clock = new SampleClock(PACKED);
        try (Archive archive = Archive.open(workFolder, clock)) {
            new SampleArchive(archive, clock, progress).fill();
            clock.set(PACKED);
            return new Pack(clock).pack(archive, bag, progress);
        } catch (IOException e) {
            throw new UncheckedIOException("The sample archive could not be written in " + workFolder, e);
        }
    }

    private static void refuseUnfit(Path bag, Path workFolder) {
        if (Files.exists(bag)) {
            throw new IllegalArgumentException("The sample bag needs a name that is free; " + bag
                    + " is already there. Move it away or choose another.");
        }
        if (Files.isDirectory(workFolder)) {
            try (Stream<Path> inside = Files.list(workFolder)) {
                if (inside.findAny().isPresent()) {
                    throw new IllegalArgumentException("The sample archive is filled in a folder that is missing or "
                            + "empty; found files in " + workFolder + ". Choose another.");
                }
            } catch (IOException e) {
                throw new UncheckedIOException("The folder " + workFolder + " cannot be read", e);
            }
        }
    }

    private void fill() {
        for (Telling telling : Telling.all()) {
            progress.orStop();
            clock.set(telling.at());
            save(telling);
        }
        if (!darkroom.untaken().isEmpty()) {
            throw new IllegalStateException("No sample piece tells of these photographs: " + darkroom.untaken());
        }
        calibrations.run();
    }

    private void save(Telling telling) {
        ObjectNode entered = telling.entered();
        switch (telling.kind()) {
            case "studio" -> save(telling, Kinds.STUDIO, SampleRecords.read(StudioRecords.STUDIO, entered));
            case "party" -> save(telling, Kinds.PARTY, SampleRecords.read(StudioRecords.PARTY, entered));
            case "board-pair" ->
                save(
                        telling,
                        Kinds.BOARD_PAIR,
                        SampleRecords.read(BoardPairRecord.BOARD_PAIR, SampleRecords.withHoles(entered)));
            case "cloth" -> save(telling, Kinds.CLOTH, SampleRecords.read(MaterialRecords.CLOTH, entered));
            case "lot" -> save(telling, Kinds.LOT, SampleRecords.read(MaterialRecords.LOT, entered));
            case "clamping" -> save(telling, Kinds.CLAMPING, SampleRecords.read(ClampingRecord.CLAMPING, entered));
            case "piece" -> savePiece(telling);
            case "examination" ->
                save(
                        telling,
                        Kinds.EXAMINATION,
                        SampleRecords.read(
                                ExaminationRecord.EXAMINATION, SampleRecords.withMarks(entered, darkroom::digest)));
            case "agreement" -> save(telling, Kinds.AGREEMENT, SampleRecords.read(AgreementRecord.AGREEMENT, entered));
            case "paper" -> issue(telling, entered);
            default ->
                throw new IllegalStateException("The sample tells of a kind it does not keep: " + telling.kind());
        }
    }

    /** A piece's new photographs are saved in the same act, so that the piece can name them. */
    private void savePiece(Telling telling) {
        List<Photo> arrived = new ArrayList<>();
        Piece piece = SampleRecords.read(
                PieceRecord.PIECE,
                SampleRecords.withPhotographs(telling.entered(), photo -> darkroom.photo(photo, arrived::add)));
        String number = piece.number().value();
        archive.ledger().write(telling.author(), act -> {
            arrived.forEach(photo -> act.create(Kinds.PHOTO, photo));
            return act.save(Kinds.PIECE, piece, versions(Kinds.PIECE, number), telling.note());
        });
    }

    /** Prints for nobody; what was said stays in the ledger. */
    private IssuedPaper issue(Telling telling, ObjectNode e) {
        PrintSettings request = PrintSettings.of(
                        chosen(LabelKind.values(), e.path("kind").asText()),
                        chosen(Market.values(), e.path("market").asText()))
                .arranged(chosen(Arrangement.values(), e.path("arrangement").asText()));
        List<Saved<Piece>> pieces = e.path("pieces")
                .valueStream()
                .map(number ->
                        archive.ledger().find(Kinds.PIECE, number.textValue()).orElseThrow())
                .toList();
        try {
            return LabelIssuer.print(archive, pieces, request, clock, telling.author(), progress);
        } catch (IOException io) {
            throw new UncheckedIOException("The sample's labels could not be laid out", io);
        }
    }

    private static <E extends CodedChoice> E chosen(E[] all, String word) {
        return CodedChoice.find(all, word)
                .orElseThrow(() -> new IllegalStateException("The sample asks for “" + word + "”, which there is not"));
    }

    private <T> void save(Telling telling, Kind<T> kind, T record) {
        int versions = versions(kind, kind.id().apply(record));
        archive.ledger().write(telling.author(), act -> act.save(kind, record, versions, telling.note()));
    }

    private int versions(Kind<?> kind, String id) {
        return archive.ledger().history(kind.key(id)).size();
    }
}
