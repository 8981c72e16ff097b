package tenterbook.exchange;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.act.ActRequest;
import tenterbook.archive.act.ActWriter;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.rescue.Rescue;
import tenterbook.exchange.sheet.ColumnProposal;
import tenterbook.exchange.sheet.ImportChoices;
import tenterbook.exchange.sheet.SheetHead;
import tenterbook.exchange.sheet.SheetImport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Act;

/** Work in a process of its own that is killed at any moment. What is done stands on a line of a file as soon as it is acknowledged. */
public final class KilledWork {
    /** Rows of one imported sheet; more than one transaction takes. */
    public static final int ROWS = 220;

    public enum Kind {
        SAVE,
        ACT,
        UPLOAD,
        IMPORT,
        BACKUP,
        ENCRYPTED_BACKUP,
        /** An archive of an older program is opened and written. */
        MIGRATION,
        PACK,
        RESTORE,
        RESCUE,
        /** The whole program starts. This and the next ones are for {@link tenterbook.scenario.ServedWork}. */
        SERVED_START,
        SERVED_FORMS,
        SERVED_ACTS,
        SERVED_PHOTOGRAPHS,
        SERVED_SHEETS,
        SERVED_BACKUPS;

        /** Whether it goes on until it is killed. */
        boolean endless() {
            return ordinal() < PACK.ordinal() || ordinal() > SERVED_START.ordinal();
        }

        /** The word that acknowledges a whole round of it. */
        String word() {
            return switch (this) {
                case SAVE, MIGRATION -> "board";
                case ACT, SERVED_ACTS -> "sold";
                case UPLOAD, SERVED_PHOTOGRAPHS -> "photo";
                case IMPORT, SERVED_SHEETS -> "import";
                case BACKUP, ENCRYPTED_BACKUP, SERVED_BACKUPS -> "backup";
                case SERVED_START, SERVED_FORMS -> "piece";
                case PACK, RESTORE, RESCUE -> "ready";
            };
        }

        boolean served() {
            return ordinal() >= SERVED_START.ordinal();
        }
    }

    private static final Clock CLOCK = Clock.systemUTC();

    private final Path from;
    private final Path to;
    private final Path acknowledged;
    private Instant backedUp = Instant.EPOCH;

    /** Unlike in every other process, so that nothing is recorded twice. */
    private final String name = Long.toString(ProcessHandle.current().pid() * 1000 + System.nanoTime() % 1000, 36)
            .toUpperCase(Locale.ROOT);

    private KilledWork(Path from, Path to, Path acknowledged) {
        this.from = from;
        this.to = to;
        this.acknowledged = acknowledged;
    }

    /** {@code KIND FROM TO ACKNOWLEDGED N}: halts at the nth sign of progress; 0 for never. Without N each kind is done once. */
    public static void main(String[] arguments) throws IOException {
        KilledWork work = new KilledWork(Path.of(arguments[1]), Path.of(arguments[2]), Path.of(arguments[3]));
        if (arguments.length > 4) {
            work.run(Kind.valueOf(arguments[0]), haltingAt(Integer.parseInt(arguments[4])));
        } else {
            work.once();
        }
    }

    static Process start(Kind kind, Path from, Path to, Path acknowledged, int haltAt) throws IOException {
        return start(
                List.of(),
                acknowledged,
                kind.name(),
                from.toString(),
                to.toString(),
                acknowledged.toString(),
                Integer.toString(haltAt));
    }

    /** @param settings of Java */
    static Process start(List<String> settings, Path acknowledged, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx192m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true"));
        command.addAll(settings);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), KilledWork.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(acknowledged.resolveSibling("child.log").toFile())
                .start();
    }

    /** Every kind once, to learn which classes it loads. */
    private void once() throws IOException {
        for (Kind kind : List.of(Kind.PACK, Kind.RESTORE, Kind.RESCUE)) {
            new KilledWork(
                            kind == Kind.RESTORE ? to.resolve(Kind.PACK.name()) : from,
                            to.resolve(kind.name()),
                            acknowledged)
                    .run(kind, Progress.UNWATCHED);
        }
        try (Archive archive = Archive.open(from, CLOCK)) {
            for (Kind kind : List.of(Kind.SAVE, Kind.ACT, Kind.UPLOAD, Kind.IMPORT, Kind.BACKUP)) {
                round(kind, archive, kind.ordinal());
            }
            SharedBackupKey.giveTo(from);
            round(Kind.ENCRYPTED_BACKUP, archive, Kind.ENCRYPTED_BACKUP.ordinal());
        }
    }

    private static Progress haltingAt(int last) {
        return new Progress() {
            private int seen;

            @Override
            public void at(long done, long total, String what) {
                seen++;
                if (seen == last) {
                    Runtime.getRuntime().halt(9);
                }
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        };
    }

    private void done(String what) {
        try {
            Files.writeString(acknowledged, what + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void run(Kind kind, Progress progress) throws IOException {
        done("ready");
        switch (kind) {
            case RESTORE -> new Restore(CLOCK).restore(from, to, progress);
            case RESCUE -> Rescue.run(from, to, CLOCK, progress);
            case PACK -> {
                try (Archive archive = Archive.open(from, CLOCK)) {
                    new Pack(CLOCK).pack(archive, to, progress);
                }
            }
            default -> {
                try (Archive archive = Archive.open(from, CLOCK)) {
                    endlessly(kind, archive);
                }
            }
        }
        done("whole");
    }

    private void endlessly(Kind kind, Archive archive) throws IOException {
        int i = 0;
        while (round(kind, archive, i)) {
            i++;
        }
    }

    /** @return false where nothing is left to do */
    private boolean round(Kind kind, Archive archive, int i) throws IOException {
        switch (kind) {
            case SAVE, MIGRATION -> save(archive, i);
            case UPLOAD -> upload(archive, i);
            case IMPORT -> {
                bringIn(archive, name + i, ROWS, acknowledged.getParent());
                done("import " + name + i);
            }
            case BACKUP, ENCRYPTED_BACKUP -> {
                save(archive, i);
                awaitSecondAfter(backedUp);
                backedUp = Instant.now();
                done("backup "
                        + new Backup(to, CLOCK)
                                .make(archive, Progress.UNWATCHED)
                                .generation());
            }
            default -> {
                return sell(archive);
            }
        }
        return true;
    }

    /** Backups are named by the second. */
    static void awaitSecondAfter(Instant moment) {
        while (Instant.now().getEpochSecond() == moment.getEpochSecond()) {
            try {
                Thread.sleep(5);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private void save(Archive archive, int i) {
        String id = name + i;
        archive.ledger().write("maker", act -> act.create(Kinds.BOARD_PAIR, Demo.board(id, "first")));
        done("board " + id + " first");
        archive.ledger().write("maker", act -> act.save(Kinds.BOARD_PAIR, Demo.board(id, "second"), 1, ""));
        done("board " + id + " second");
    }

    private void upload(Archive archive, int i) throws IOException {
        Originals originals = new Originals(archive.folder());
        PhotoRegistration photos = new PhotoRegistration(
                archive, new PhotoIntake(originals, new Previews(archive.folder(), originals), archive.cloths()));
        Random random = new Random();
        BufferedImage image = new BufferedImage(90, 60, BufferedImage.TYPE_INT_RGB);
        image.createGraphics().drawString(name + i, random.nextInt(20), 30);
        image.setRGB(1, 1, random.nextInt());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", bytes);
        done("photo "
                + photos.take(new ByteArrayInputStream(bytes.toByteArray()), "a.jpg")
                        .digest()
                        .hex());
    }

    /** Pieces whose numbers begin with {@code start} and a hyphen. */
    static void bringIn(Archive archive, String start, int count, Path work) throws IOException {
        Path sheet = Files.createTempFile(work, "sheet", ".csv");
        try {
            StringBuilder rows = new StringBuilder("number,title\n");
            for (int row = 0; row < count; row++) {
                rows.append(start)
                        .append('-')
                        .append(row)
                        .append(",row ")
                        .append(row)
                        .append('\n');
            }
            Files.writeString(sheet, rows);
            SheetKind kind = SheetKind.PIECES;
            new SheetImport(
                            archive,
                            sheet,
                            kind,
                            new ColumnProposal(kind, SheetHead.of(SheetFile.of(sheet), kind)).plan(),
                            ImportChoices.USUAL)
                    .write(start, count, Progress.UNWATCHED, row -> {});
        } finally {
            Files.delete(sheet);
        }
    }

    /** @return false where nothing is left to sell */
    private boolean sell(Archive archive) {
        List<Piece> left = archive.ledger().all(Kinds.PIECE).stream()
                .map(Saved::record)
                .filter(piece -> piece.events().isEmpty())
                .limit(20)
                .toList();
        for (Piece piece : left) {
            ActRequest request = new ActRequest(
                    List.of(new ActRequest.ActPiece(piece.number(), null, null)),
                    PartialDate.of(LocalDate.of(2025, 3, 4)),
                    null,
                    null,
                    "Buyer of " + piece.number(),
                    "",
                    null,
                    false,
                    "",
                    false,
                    null,
                    Quantity.UNRECORDED,
                    List.of());
            new ActWriter(archive, Act.SELL, request, LocalDate.of(2025, 3, 4)).write();
            done("sold " + piece.number());
        }
        return !left.isEmpty();
    }
}
