package tenterbook.ledger;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.words.Joined;

/** Persons and works that name them, with salts that are the same each time. */
final class People {
    record Person(String id, String name, String contact, String notes) {}

    record Happening(String what, String party, String note, String price) {}

    record Work(String id, String title, String holder, String place, String notes, List<Happening> events) {}

    static final Kind<Person> PERSON = new Kind<>(
                    "party",
                    Joined.with("", "party"),
                    new MappedCodec<>(Things.JSON, Person.class),
                    Person::id,
                    person -> List.of())
            .withPrivacy(new Privacy(true, List.of("*"), List.of("name", "contact"), Map.of()));
    static final Kind<Work> WORK = new Kind<>(
                    "piece",
                    Joined.with("", "piece"),
                    new MappedCodec<>(Things.JSON, Work.class),
                    Work::id,
                    work -> java.util.stream.Stream.concat(
                                    java.util.stream.Stream.ofNullable(work.holder()),
                                    work.events().stream().map(Happening::party).filter(java.util.Objects::nonNull))
                            .distinct()
                            .map(PERSON::key)
                            .toList())
            .withPrivacy(new Privacy(
                    false,
                    List.of("holder", "place", "notes", "events.*.party", "events.*.note", "events.*.price"),
                    List.of(),
                    Map.of("holder", List.of("place"), "events.*.party", List.of("events.*.note"))));

    static final String NAME = "Brites Almorena";
    static final String CONTACT = "7 Rua do Sal Velho\n+351 000 000 017";
    static final Person BUYER = new Person("buyer-1", NAME, CONTACT, "Likes blue.");
    static final Person GALLERY =
            new Person("vermia", "Sala Vermia", "at the quay", "Owner is a cousin of brites almorena.");

    private People() {}

    static Work work(String id, String title, String holder, Happening... events) {
        return new Work(id, title, holder, "at home with the holder", "Two panels.", List.of(events));
    }

    static Happening sold(String to, String note) {
        return new Happening("sold", to, note, "160.00");
    }

    static KnownKinds kinds() {
        AtomicInteger salt = new AtomicInteger();
        return new KnownKinds(List.of(PERSON, WORK), () -> "%032x".formatted(salt.incrementAndGet()));
    }

    /** Revisions 1 to 3, the buyer, the gallery and a work, in a new ledger of format 1 or 2. */
    static void fill(Path root, int format, Work work) {
        if (format == 1) {
            String url = "jdbc:sqlite:" + root.resolve("ledger.db");
            Flyway.configure()
                    .dataSource(url, null, null)
                    .loggers("slf4j")
                    .load()
                    .migrate();
            inFormatOne(root, old -> {
                old.save(PERSON, BUYER);
                old.save(PERSON, GALLERY);
                old.save(WORK, work);
            });
            return;
        }
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(PERSON, BUYER));
            opened.ledger.write("Inês", act -> act.create(PERSON, GALLERY));
            opened.ledger.write("Inês", act -> act.create(WORK, work));
        }
    }

    static void inFormatOne(Path root, Consumer<FormatOne> saves) {
        Jdbi.create("jdbc:sqlite:" + root.resolve("ledger.db"))
                .useTransaction(handle -> saves.accept(new FormatOne(handle)));
    }

    /** An open ledger in a held folder. */
    static final class Opened implements AutoCloseable {
        private final ArchiveFolder folder;
        final Ledger ledger;

        Opened(Path root) {
            folder = ArchiveFolder.hold(root);
            ledger = Ledger.open(folder, Things.CLOCK, kinds());
        }

        List<String> check() {
            return ledger.check().run(Progress.UNWATCHED).stream()
                    .map(Finding::toString)
                    .toList();
        }

        @Override
        public void close() {
            ledger.close();
            folder.close();
        }
    }
}
