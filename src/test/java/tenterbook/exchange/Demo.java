package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.imaging.Photo;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;

/** A small archive of the invented studio, with records of most kinds, a history, a withdrawal and photographs. */
public final class Demo {
    public static final Clock CLOCK = Clock.fixed(Instant.parse("2024-09-30T16:20:00Z"), ZoneOffset.UTC);
    static final String DRAFT = "typed and never saved: Casa Ondrel asks about the heron";
    static final String BUYER = "Sala Vermia, at the quay";

    private Demo() {}

    /** Fills {@code root} with {@code photos} photographs of {@code bytes} each; the archive is left open. */
    public static Archive open(Path root, int photos, int bytes) throws IOException {
        Archive archive = Archive.open(root, CLOCK);
        List<Digest> taken = Stream.iterate(1, n -> n + 1)
                .limit(photos)
                .map(n -> photo(archive, n, bytes))
                .toList();
        archive.ledger().write("Inês Valderim", act -> {
            act.create(
                    Kinds.STUDIO,
                    new Studio(
                            "Oficina Valderim", "Inês Valderim", "Porto Sarelho", "Portugal", "", "", null, null, ""));
            act.create(Kinds.PARTY, new Party(new PartyId("vermia"), "Sala Vermia", "gallery", BUYER, ""));
            act.create(Kinds.BOARD_PAIR, board("B01", "Fig and wasp"));
            act.create(Kinds.BOARD_PAIR, board("B09", "cut by mistake"));
            for (Digest digest : taken) {
                act.create(Kinds.PHOTO, record(digest, bytes));
            }
            act.create(
                    Kinds.CLAMPING,
                    new Clamping(
                            new ClampingId("C24-001"),
                            "",
                            null,
                            List.of(new BoardUse(new BoardId("B01"), "I")),
                            null,
                            null,
                            null,
                            null,
                            "",
                            "",
                            "good mirror",
                            "line\none\twith “quotes” and \\ and \u0001",
                            null,
                            null,
                            null,
                            null));
            return act.create(Kinds.PIECE, piece("Maré", taken));
        });
        archive.ledger().write("Tomé Quarral", act -> {
            act.withdraw(Kinds.BOARD_PAIR, "B09", 1, "never carved");
            return act.save(Kinds.PIECE, piece("Maré, a figueira", taken), 1, "title found");
        });
        archive.ledger().drafts().keep("piece/V24-002", DRAFT);
        return archive;
    }

    public static Archive open(Path root) throws IOException {
        return open(root, 3, 5000);
    }

    /** A bag of the small archive. */
    static Bag bag(Path around) throws IOException {
        try (Archive archive = open(around.resolve("studio"))) {
            return new Pack(CLOCK).pack(archive, around.resolve("bag"), Progress.UNWATCHED);
        }
    }

    static BoardPair board(String id, String image) {
        return new BoardPair(new BoardId(id), image, "pear", null, null, null, null, "", null, "");
    }

    public static Piece piece(String title, List<Digest> photos) {
        return new Piece(
                new PieceNumber("V24-001"),
                title,
                "",
                null,
                null,
                null,
                null,
                null,
                "",
                List.of(new MadeIn(new ClampingId("C24-001"), null, "")),
                null,
                new PartyId("vermia"),
                "",
                null,
                "",
                photos.stream()
                        .map(photo -> new PiecePhoto(photo, null, "", 1, null))
                        .toList(),
                null,
                null,
                null,
                "",
                null);
    }

    static Photo record(Digest digest, int bytes) {
        return new Photo(
                digest,
                "DSC.jpg",
                bytes,
                "image/jpeg",
                40,
                30,
                1,
                null,
                null,
                null,
                null,
                true,
                true,
                List.of(),
                List.of(),
                "uncalibrated",
                List.of());
    }

    /** Puts bytes where an original lies. They need be no picture here: a bag keeps bytes. */
    public static Digest photo(Archive archive, int seed, int length) {
        byte[] bytes = new byte[length];
        new Random(seed).nextBytes(bytes);
        Digest digest = Digest.of(bytes);
        try {
            Path file = file(archive, digest);
            Files.createDirectories(file.getParent());
            Files.write(file, bytes);
            return digest;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static Path file(Archive archive, Digest digest) {
        return archive.folder().photos().resolve(digest.hex().substring(0, 2)).resolve(digest.hex() + ".jpg");
    }

    /** Every path under a folder, in order, to compare before and after. */
    static List<String> tree(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.map(path -> folder.relativize(path).toString()).sorted().toList();
        }
    }
}
