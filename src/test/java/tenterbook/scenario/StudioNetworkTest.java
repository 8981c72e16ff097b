package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;
import tenterbook.archive.Kinds;
import tenterbook.exchange.Pack;
import tenterbook.exchange.backup.Backup;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;

/** Devices of the local network over the encrypted connection, which here is reached through 127.0.0.1 like any other address. */
class StudioNetworkTest {
    @TempDir
    static Path around;

    private static Wiring wiring;
    private static Client here;
    private static Client network;

    @BeforeAll
    static void open() throws Exception {
        wiring = Wiring.serve(around.resolve("studio"), 0, Clock.systemUTC());
        here = new Client(wiring.port());
        here.post("/pieces", "number", "V24-001", "title", "Maré");
        wiring.network().openEncrypted(0);
        SSLContext trusting = trusting(here.get("/studio/devices/authority.crt").body());
        network = new Client(wiring.network().port(), port -> {
            SSLSocket socket = (SSLSocket) trusting.getSocketFactory().createSocket("127.0.0.1", port);
            SSLParameters parameters = socket.getSSLParameters();
            parameters.setEndpointIdentificationAlgorithm("HTTPS");
            socket.setSSLParameters(parameters);
            return socket;
        });
    }

    /** Trusts the authority of the studio and no other, as a phone that installed its certificate. */
    private static SSLContext trusting(byte[] certificate) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setCertificateEntry(
                "root",
                CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(certificate)));
        TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
        trust.init(store);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);
        return context;
    }

    @AfterAll
    static void close() {
        if (wiring != null) {
            wiring.close();
        }
    }

    private static String code(String rights) throws IOException {
        here.post("/studio/devices/code", "rights", rights);
        Matcher digits = Pattern.compile("class=\"digits\">(\\d{4}) (\\d{4})<")
                .matcher(here.get("/studio/devices").text());
        assertThat(digits.find()).isTrue();
        return digits.group(1) + digits.group(2);
    }

    private static Answer sent(String path, String cookie, String... namesAndValues) throws IOException {
        return network.send(
                "POST",
                path,
                Client.form(namesAndValues).getBytes(StandardCharsets.US_ASCII),
                "Content-Type",
                "application/x-www-form-urlencoded",
                "Cookie",
                cookie,
                "Origin",
                "https://127.0.0.1:" + network.port());
    }

    /** Pairs a device and gives its cookie. */
    private static String paired(String name, String rights) throws IOException {
        Answer answer = sent("/pair", "x=1", "code", code(rights), "name", name);
        assertThat(answer.status()).as(answer.words()).isEqualTo(303);
        assertThat(answer.location()).isEqualTo("/phone");
        String cookie = answer.headers().get("set-cookie").stream()
                .filter(each -> each.startsWith("__Host-device="))
                .findFirst()
                .orElseThrow();
        assertThat(cookie)
                .contains("Secure", "HttpOnly", "SameSite=Strict", "Path=/")
                .doesNotContain("Domain");
        return cookie.substring(0, cookie.indexOf(';'));
    }

    private static void strangersSeeNothing(Client client, List<String> paths) throws IOException {
        for (String path : paths) {
            Answer answer = client.get(path, "Accept", "text/html");
            assertThat(answer.status()).as(path).isEqualTo(403);
            assertThat(answer.text())
                    .as(path)
                    .contains("not paired")
                    .doesNotContain("Maré")
                    .doesNotContain("<script");
        }
    }

    /** Every route of the server, and some paths that are none. */
    private static List<String> paths() {
        List<String> paths = new ArrayList<>(List.of("/nowhere", "/webjars/htmx.org/2.0.10/dist/htmx.min.js"));
        for (String route : wiring.routes()) {
            String path = route.substring(route.indexOf(' ') + 1);
            if (path.startsWith("/") && !path.startsWith("/pair") && path.indexOf('*') < 0) {
                paths.add(path.replaceAll("\\{[^}]*}", "V24-001"));
            }
        }
        assertThat(paths).hasSizeGreaterThan(150);
        return paths.stream().distinct().toList();
    }

    @Test
    void aDeviceThatIsNotPairedGetsOneSentenceAndThePageOnWhichOnePairs() throws IOException {
        strangersSeeNothing(
                network, List.of("/", "/pieces/V24-001", "/api/pieces", "/studio", "/script/tenterbook.js"));
        Answer posted = network.postFiles(
                "/pieces/V24-001/edit", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(9))), "title", "Mine");
        assertThat(posted.status()).isEqualTo(403);
        assertThat(network.get("/", "Cookie", "__Host-device=" + "0".repeat(64)).status())
                .isEqualTo(403);
        assertThat(network.get("/pair").status()).isEqualTo(200);
        assertThat(network.get("/style/tenterbook.css").status()).isEqualTo(200);
        assertThat(network.get("/pair").text()).doesNotContain("Maré").contains("Pair this device");
        assertThat(network.get("/pair/authority.crt").body())
                .isEqualTo(here.get("/studio/devices/authority.crt").body());
    }

    @Test
    void anotherHostOrOriginIsTurnedAwayAlsoWithThePairingOfADevice() throws IOException {
        String cookie = paired("guarded", "everything");
        assertThat(network.get("/", "Cookie", cookie).status()).isEqualTo(200);
        for (String host :
                List.of("evil.example", "localhost:" + network.port(), "8.8.8.8", "127.0.0.1.evil.example")) {
            assertThat(network.get("/pair", "Host", host, "Cookie", cookie).status())
                    .as(host)
                    .isEqualTo(403);
        }
        long before = wiring.archive().ledger().count(Kinds.PIECE);
        for (String origin : List.of("https://evil.example", "null", "http://127.0.0.1:" + network.port())) {
            Answer answer = network.send(
                    "POST",
                    "/pieces",
                    "number=X-1".getBytes(),
                    "Content-Type",
                    "application/x-www-form-urlencoded",
                    "Cookie",
                    cookie,
                    "Origin",
                    origin);
            assertThat(answer.status()).as(origin).isEqualTo(403);
        }
        assertThat(wiring.archive().ledger().count(Kinds.PIECE)).isEqualTo(before);
        assertThat(here.get("/", "Host", "192.168.1.5").status())
                .as("loopback as before")
                .isEqualTo(421);
    }

    @Test
    void aDeviceMayWhatWasChosenForItAndItsNameIsTheAuthor() throws IOException {
        String look = paired("onlooker", "look");
        String record = paired("Tomé", "record");
        String all = paired("tablet", "everything");
        for (String cookie : List.of(look, record, all)) {
            for (String path : List.of("/", "/pieces/V24-001", "/phone")) {
                assertThat(network.get(path, "Cookie", cookie).status())
                        .as(path)
                        .isEqualTo(200);
            }
        }
        for (String path : List.of(
                "/studio",
                "/people",
                "/people/x/erase",
                "/import",
                "/history/piece/V24-001",
                "/words",
                "/photos/folder",
                "/sheets.xlsx",
                "/today")) {
            assertThat(network.get(path, "Cookie", record).status()).as(path).isEqualTo(403);
        }
        assertThat(network.get("/studio", "Cookie", all).status()).isEqualTo(200);
        for (String path : List.of(
                "/studio/devices", "/studio/devices/", "/studio/devices/code", "/studio/devices/authority.crt")) {
            assertThat(network.get(path, "Cookie", all).status()).as(path).isEqualTo(403);
        }
        assertThat(sent("/studio/devices/code", all, "rights", "everything").status())
                .isEqualTo(403);
        assertThat(network.get("/", "Cookie", record).text())
                .contains("/pieces/new")
                .doesNotContain("href=\"/studio\"");

        assertThat(sent("/pieces", look, "number", "V24-002").status()).isEqualTo(403);
        assertThat(sent("/pieces/V24-001/withdraw", record, "why", "").status()).isEqualTo(403);
        assertThat(sent("/pieces", record, "number", "V24-002", "title", "From the phone")
                        .status())
                .isEqualTo(303);
        Saved<Piece> saved =
                wiring.archive().ledger().find(Kinds.PIECE, "V24-002").orElseThrow();
        assertThat(saved.author()).isEqualTo("Tomé");
        here.post("/pieces", "number", "V24-003");
        assertThat(wiring.archive()
                        .ledger()
                        .find(Kinds.PIECE, "V24-003")
                        .orElseThrow()
                        .author())
                .isEqualTo("maker");
    }

    /** The form of the computer was opened before; what it saves does not take the phone's photograph off the piece. */
    @Test
    void aPhotographFromThePhoneJoinsTheFormThatIsOpenOnTheComputer() throws IOException {
        String phone = paired("camera", "record");
        here.post("/pieces", "number", "V24-020", "title", "Heron");
        Answer open = here.get("/pieces/V24-020/edit");
        Matcher version = Pattern.compile("name=\"version\" value=\"(\\d+)\"").matcher(open.text());
        assertThat(version.find()).isTrue();
        assertThat(network.get("/phone", "Cookie", phone).words()).contains("Photograph V24-020 Heron");
        Answer added = network.postFiles(
                "/phone/photographs",
                List.of(
                        new Client.Part("files", "a.jpg", Pictures.jpeg(21)),
                        new Client.Part("files", "b.txt", "no picture".getBytes(StandardCharsets.UTF_8))),
                List.of("Cookie", phone),
                "piece",
                "V24-020");
        assertThat(added.status()).as(added.words()).isEqualTo(303);
        String gallery = "/pieces/V24-020/photographs?version=";
        assertThat(here.get(gallery + version.group(1)).text()).contains("<img");
        assertThat(here.get(gallery + (Integer.parseInt(version.group(1)) + 1)).status())
                .isEqualTo(204);
        Answer saved = here.post(
                "/pieces/V24-020/edit",
                "number",
                "V24-020",
                "title",
                "Heron in reeds",
                "photosShown",
                "1",
                "version",
                version.group(1));
        assertThat(saved.status()).as(saved.words()).isEqualTo(303);
        Piece piece = wiring.archive().piece("V24-020").orElseThrow();
        assertThat(piece.title()).isEqualTo("Heron in reeds");
        assertThat(piece.photos()).hasSize(1);
        assertThat(here.post("/pieces/V24-020/edit", "number", "V24-020", "title", "Egret", "version", "1")
                        .status())
                .as("another change is a conflict as before")
                .isEqualTo(409);
    }

    @Test
    void typingThatIsNotSavedStaysWithItsDevice() throws IOException {
        String phone = paired("typing", "record");
        assertThat(sent("/drafts/piece", phone, "title", "half a title").status())
                .isEqualTo(204);
        assertThat(here.get("/pieces/new").field("title")).isEmpty();
        assertThat(here.get("/").text()).doesNotContain("half a title").doesNotContain("device/");
        assertThat(network.get("/pieces/new", "Cookie", phone).field("title")).isEqualTo("half a title");
    }

    @Test
    void aRevokedDeviceIsAStrangerAtOnce() throws IOException {
        String cookie = paired("lost phone", "everything");
        assertThat(network.get("/", "Cookie", cookie).status()).isEqualTo(200);
        Matcher id = Pattern.compile("lost phone[\\s\\S]*?name=\"device\" value=\"([0-9a-f]+)\"")
                .matcher(here.get("/studio/devices").text());
        assertThat(id.find()).isTrue();
        here.post("/studio/devices/revoke", "device", id.group(1));
        assertThat(network.get("/", "Cookie", cookie).status()).isEqualTo(403);
        assertThat(here.get("/studio/devices").text()).doesNotContain("lost phone<");
    }

    @Test
    void aWrongCodeIsRefusedAndTheCodeIsForOneDevice() throws IOException {
        String code = code("look");
        String wrong = code.equals("00000000") ? "00000001" : "00000000";
        assertThat(sent("/pair", "x=1", "code", wrong, "name", "guess").status())
                .isEqualTo(422);
        assertThat(sent("/pair", "x=1", "code", code, "name", "guess").status())
                .as("too soon")
                .isEqualTo(429);
        assertThat(sent("/pair", "x=1", "code", code("look"), "name", " ").status())
                .isEqualTo(422);
        assertThat(here.get("/studio/devices/code").text()).contains("A device has opened the page");
        paired("first", "look");
        assertThat(here.get("/studio/devices/code").text()).contains("The device is paired");
    }

    @Test
    void theSquareHoldsTheAddressWithTheCode() throws Exception {
        String code = code("look");
        String page = here.get("/studio/devices").text();
        Matcher square = Pattern.compile("viewBox=\"0 0 (\\d+) \\d+\"[^>]*crispEdges[\\s\\S]*?<path d=\"([^\"]+)\"")
                .matcher(page);
        assertThat(square.find()).isTrue();
        int scale = 4;
        int size = Integer.parseInt(square.group(1)) * scale;
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
        Graphics2D ink = image.createGraphics();
        ink.setColor(Color.WHITE);
        ink.fillRect(0, 0, size, size);
        ink.setColor(Color.BLACK);
        Matcher module = Pattern.compile("M(\\d+) (\\d+)h1v1h-1z").matcher(square.group(2));
        while (module.find()) {
            ink.fillRect(
                    Integer.parseInt(module.group(1)) * scale, Integer.parseInt(module.group(2)) * scale, scale, scale);
        }
        ink.dispose();
        String read = new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image))))
                .getText();
        assertThat(read).matches("https://[^/]+:" + network.port() + "/pair\\?code=" + code);
    }

    @Test
    void neitherABagNorABackupHoldsTheFolderOfTheNetwork() throws Exception {
        paired("packed?", "look");
        assertThat(around.resolve("studio/network/authority.p12")).exists();
        Path bag = around.resolve("bag");
        new Pack(Clock.systemUTC()).pack(wiring.archive(), bag, Progress.UNWATCHED);
        Path disk = Files.createDirectory(around.resolve("disk"));
        new Backup(disk, Clock.systemUTC()).make(wiring.archive(), Progress.UNWATCHED);
        for (Path copy : List.of(bag, disk)) {
            try (Stream<Path> files = Files.walk(copy)) {
                assertThat(files.map(file -> copy.relativize(file).toString()))
                        .hasSizeGreaterThan(5)
                        .noneMatch(
                                name -> name.contains("network") || name.endsWith(".p12") || name.contains("devices"));
            }
        }
    }

    /** A clock that is moved by hand. */
    private static final class Moved extends Clock {
        private Instant now = Instant.parse("2024-09-30T16:20:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public synchronized Instant instant() {
            return now;
        }

        synchronized void on(int seconds) {
            now = now.plusSeconds(seconds);
        }
    }

    @Test
    void plainHttpNeedsItsTickThePageSaysWhatToCheckAndOnceClosedNothingAnswers() throws Exception {
        Path folder = around.resolve("other");
        Moved clock = new Moved();
        try (Wiring other = Wiring.serve(folder, 0, clock)) {
            Client loopback = new Client(other.port());
            assertThat(loopback.get("/studio/devices").words()).contains("Closed: only this computer");
            loopback.post("/studio/devices/open", "how", "plain");
            assertThat(other.network().isOpen()).isFalse();
            other.network().openPlain(0);
            int port = other.network().port();
            Client plain = new Client(port);
            strangersSeeNothing(plain, paths());
            assertThat(plain.get("/pair").words()).contains("not encrypted");
            assertThat(loopback.get("/studio/devices").words()).contains("can read along");

            loopback.post("/studio/devices/code", "rights", "look");
            String state = "/studio/devices/code";
            assertThat(loopback.get(state).words()).contains("Waiting for the device");
            clock.on(61);
            assertThat(loopback.get(state).words())
                    .contains("No device has reached", "guest network", "isolation", "firewall");
            new Socket("127.0.0.1", port).close();
            plain.get("/pair");
            assertThat(loopback.get(state).words()).contains("A device has opened the page");
            clock.on(240);
            assertThat(loopback.get(state).words()).contains("The code has ended");

            loopback.post("/studio/devices/close");
            assertThatThrownBy(() -> new Socket("127.0.0.1", port).close()).isInstanceOf(IOException.class);
            assertThat(loopback.get("/").status()).isEqualTo(200);
        }
    }
}
