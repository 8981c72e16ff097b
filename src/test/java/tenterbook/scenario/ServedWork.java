package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tenterbook.exchange.KilledWork;
import tenterbook.exchange.KilledWork.Kind;
import tenterbook.measure.Digest;

/**
 * The whole program in a process of its own, with clients that post to it until it is killed. Of every answer that
 * acknowledged something a line is kept, as soon as all of that answer has arrived.
 */
public final class ServedWork {
    private static final Pattern MADE = Pattern.compile("The backup (\\S+) is made and was read back");

    /** Makes the names and pictures of one process differ. */
    private static final AtomicInteger NEXT = new AtomicInteger();

    private final List<String> settings;
    private final Path archive;
    private final Path disk;
    private final List<String> acknowledged = Collections.synchronizedList(new ArrayList<>());
    private final List<String> faults = Collections.synchronizedList(new ArrayList<>());

    /**
     * @param settings of Java
     * @param disk for backups
     */
    public ServedWork(List<String> settings, Path archive, Path disk) {
        this.settings = settings;
        this.archive = archive;
        this.disk = disk;
    }

    private ServedChild start() throws IOException {
        return ServedChild.start(archive, 0, settings.toArray(String[]::new));
    }

    /** Does every kind of work once and ends in the ordinary way. */
    public void once() throws Exception {
        try (ServedChild child = start()) {
            Client client = whole(child, List.of());
            for (Kind kind : Kind.values()) {
                for (int worker = 0; worker < 2; worker++) {
                    round(kind, client, worker);
                }
            }
            end(child);
        }
    }

    /**
     * A start after a kill, ended in the ordinary way: the photographs that had no record have joined those that wait, and the check on the studio's page
     * finds nothing wrong.
     *
     * @param unnamed digests of originals that no record named after the last kill
     * @return how long it took until it answered, in milliseconds
     */
    public long whole(Collection<String> unnamed) throws Exception {
        long began = System.nanoTime();
        try (ServedChild child = start()) {
            Client client = child.client();
            long millis = (System.nanoTime() - began) / 1_000_000;
            whole(client, unnamed);
            end(child);
            return millis;
        }
    }

    private static void end(ServedChild child) throws Exception {
        child.end();
        child.ended();
    }

    private static Client whole(ServedChild child, Collection<String> unnamed) throws IOException {
        Client client = child.client();
        whole(client, unnamed);
        return client;
    }

    private static void whole(Client client, Collection<String> unnamed) throws IOException {
        for (String digest : unnamed) {
            await("The photograph " + digest + " did not join", () -> {
                try {
                    return client.get("/photos/" + digest + "/original").status() == 200;
                } catch (IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
            });
        }
        assertThat(over(client, expect(303, client.post("/studio/check"))))
                .as("the check after a start")
                .contains("Nothing is wrong");
    }

    /** Kills a start, so long after it began. */
    public void killedStart(long millis) throws Exception {
        try (ServedChild child = start()) {
            Thread.sleep(millis);
            child.kill();
        }
    }

    /**
     * Starts, looks whether all is well after the kill before, works and is killed.
     *
     * @param word with which the line of an answer begins that is waited for
     * @param millis after that answer
     * @return a line for each answer that acknowledged something
     */
    public List<String> killed(Kind kind, Collection<String> unnamed, String word, long millis) throws Exception {
        acknowledged.clear();
        try (ServedChild child = start()) {
            Client client = whole(child, unnamed);
            List<Thread> workers = IntStream.range(0, 3)
                    .mapToObj(worker -> new Thread(() -> work(kind, client, worker)))
                    .toList();
            workers.forEach(Thread::start);
            await("No answer came", () -> !faults.isEmpty() || acknowledged(word));
            Thread.sleep(millis);
            child.kill();
            for (Thread worker : workers) {
                worker.join();
            }
        }
        assertThat(faults).as("answers to %s", kind).isEmpty();
        return List.copyOf(acknowledged);
    }

    private boolean acknowledged(String word) {
        synchronized (acknowledged) {
            return acknowledged.stream().anyMatch(line -> line.startsWith(word));
        }
    }

    private void work(Kind kind, Client client, int worker) {
        try {
            while (true) {
                round(kind, client, worker);
            }
        } catch (IOException | NumberFormatException | IndexOutOfBoundsException e) {
            // It was killed, perhaps in the middle of an answer, which then was none.
        } catch (AssertionError e) {
            faults.add(e.toString());
        }
    }

    private void round(Kind kind, Client client, int worker) throws IOException {
        String name = "W" + Long.toString(ProcessHandle.current().pid(), 36).toUpperCase(Locale.ROOT)
                + NEXT.incrementAndGet();
        switch (kind) {
            case SERVED_ACTS -> sell(client, name);
            case SERVED_PHOTOGRAPHS -> photographs(client, name, worker == 0);
            case SERVED_SHEETS -> {
                if (worker == 0) {
                    sheet(client, name);
                } else {
                    forms(client, name);
                }
            }
            case SERVED_BACKUPS -> {
                if (worker == 0) {
                    Matcher made = MADE.matcher(
                            over(client, expect(303, client.post("/studio/backup", "folder", disk.toString()))));
                    // Two in one second are refused, since they are named by it.
                    if (made.find()) {
                        acknowledged.add("backup " + made.group(1));
                    }
                } else {
                    forms(client, name);
                }
            }
            default -> forms(client, name);
        }
    }

    private void piece(Client client, String number, String title) throws IOException {
        expect(303, client.post("/pieces", "number", number, "title", title));
        acknowledged.add("piece " + number + " " + title);
    }

    private void forms(Client client, String name) throws IOException {
        piece(client, name, "first");
        expect(303, client.post("/pieces/" + name + "/edit", "version", "1", "title", "second"));
        acknowledged.add("piece " + name + " second");
        Answer made = expect(201, client.postJson("/api/pieces", "{\"title\": \"program\"}"));
        acknowledged.add("piece " + made.location().replaceFirst(".*/", "") + " program");
    }

    private void sell(Client client, String name) throws IOException {
        piece(client, name, "first");
        expect(
                303,
                client.post(
                        "/acts/sell",
                        "pieces.0.piece",
                        name,
                        "pieces.0.price",
                        "180 EUR",
                        "when",
                        "2024-09-12",
                        "party",
                        "Buyer of " + name,
                        "addPerson",
                        "Buyer of " + name));
        acknowledged.add("sold " + name);
    }

    /** Three at once: given to a piece by an act, or taken in to wait. */
    private void photographs(Client client, String name, boolean given) throws IOException {
        List<Client.Part> files = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            files.add(new Client.Part("files", name + i + ".jpg", Pictures.jpeg(NEXT.incrementAndGet())));
        }
        List<String> digests =
                files.stream().map(file -> Digest.of(file.bytes()).hex()).toList();
        if (given) {
            piece(client, name, "first");
            expect(303, client.postFiles("/acts/photograph", files, "pieces.0.piece", name, "when", "2024-09-12"));
            digests.forEach(digest -> acknowledged.add("shown " + name + " " + digest));
        } else {
            JsonNode taken = expect(200, client.postFiles("/photos", files)).json();
            assertThat(taken).extracting(file -> file.path("digest").asText()).isEqualTo(digests);
        }
        digests.forEach(digest -> acknowledged.add("photo " + digest));
    }

    private void sheet(Client client, String name) throws IOException {
        String rows = IntStream.range(0, KilledWork.ROWS)
                .mapToObj(row -> name + "-" + row + ",row " + row + "\n")
                .collect(Collectors.joining("", "number,title\n", ""));
        Client.Part file = new Client.Part("file", name + ".csv", rows.getBytes(StandardCharsets.UTF_8));
        String at = expect(303, client.postFiles("/import", List.of(file), "kind", "pieces"))
                .location();
        String id = at.replaceFirst(".*/", "");
        acknowledged.add("waits " + id + " " + file.bytes().length);
        assertThat(over(client, expect(303, client.post(at, "field.0", "number", "field.1", "title"))))
                .contains(KilledWork.ROWS + " new");
        // From here on it waits, or is begun.
        acknowledged.remove("waits " + id + " " + file.bytes().length);
        Answer begun = expect(303, client.post(at + "/write"));
        acknowledged.add("begun " + id);
        assertThat(over(client, begun)).contains("Brought in: " + KilledWork.ROWS + " new");
        acknowledged.add("import " + name);
    }

    private static Answer expect(int status, Answer answer) {
        assertThat(answer.status()).as(answer.words()).isEqualTo(status);
        return answer;
    }

    /** The words with which long work ends. */
    private static String over(Client client, Answer begun) throws IOException {
        while (true) {
            Answer answer = expect(200, client.get(begun.location(), "HX-Request", "true"));
            if (!answer.text().contains("<progress")) {
                return answer.words();
            }
            pause();
        }
    }

    private static void await(String otherwise, BooleanSupplier what) {
        long until = System.nanoTime() + 300_000_000_000L;
        while (!what.getAsBoolean()) {
            if (System.nanoTime() > until) {
                throw new AssertionError(otherwise);
            }
            pause();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(5);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
