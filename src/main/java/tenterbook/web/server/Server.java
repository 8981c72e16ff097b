package tenterbook.web.server;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.staticfiles.Location;
import io.javalin.http.staticfiles.StaticFileConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.imaging.Originals;
import tenterbook.web.Site;
import tenterbook.web.device.StudioNetwork;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.LanguageChoice;
import tenterbook.web.page.TypedLengths;
import tenterbook.web.page.Words;
import tenterbook.web.recognition.RunningRecognitions;
import tenterbook.web.studio.CloseButton;
import tenterbook.web.studio.StudioPages;

/** The server: on loopback alone until the studio network is opened, guarded, with its routes and its answers to failures. */
public final class Server implements AutoCloseable {
    /** The most one upload may hold: forty photographs of the largest size. */
    private static final long MOST_UPLOADED = 40 * Originals.LIMIT_BYTES;

    /** A larger file ends the request. One between this and the limit is refused alone, and the other files are kept. */
    private static final long MOST_ARRIVING = 4 * Originals.LIMIT_BYTES;

    /** The most a form without files may hold, in bytes. */
    static final long MOST_TYPED = 4L << 20;

    /** Of what is sent, so many bytes are awaited without a thread; nearly every form is shorter. */
    private static final long AWAITED = 64 << 10;

    /** Bytes by which each arrived part counts for more than it holds. */
    private static final int FRAME = 16;

    /** The most an address may hold, with the other headers, in bytes. */
    private static final int LONGEST_ADDRESS = 64 << 10;

    private final Javalin javalin;
    private final StudioNetwork network;

    private Server(Javalin javalin, StudioNetwork network) {
        this.javalin = javalin;
        this.network = network;
    }

    /**
     * Starts serving on {@code http://127.0.0.1:port}.
     *
     * @param port 0 for any free one
     * @param close null where the program is ended otherwise
     */
    public static Server start(Site site, int port, @Nullable CloseButton close) {
        StudioNetwork network = StudioNetwork.of(site.archive().folder().root(), site.clock());
        Javalin javalin = Javalin.create(config -> configure(config, site, network, close));
        javalin.start("127.0.0.1", port);
        network.answeredBy(javalin.jettyServer().server());
        return new Server(javalin, network);
    }

    /** The local network as a second way in, closed until it is opened. */
    public StudioNetwork network() {
        return network;
    }

    /** Whether nothing listens on a loopback port yet. */
    public static boolean free(int port) {
        try (ServerSocket probe = new ServerSocket(port, 1, InetAddress.getByName("127.0.0.1"))) {
            return probe.isBound();
        } catch (IOException e) {
            return false;
        }
    }

    public int port() {
        return javalin.port();
    }

    /** Every route, as in {@code GET /api/pieces/{number}}, for comparing with what is described. */
    public List<String> routes() {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(handler -> handler.endpoint.method + " " + handler.endpoint.path)
                .toList();
    }

    private static void configure(JavalinConfig config, Site site, StudioNetwork network, @Nullable CloseButton close) {
        general(config);
        // Addresses name pieces: the thousand whose labels can be printed at once, each with its comma.
        config.jetty.modifyHttpConfiguration(http -> {
            http.setRequestHeaderSize(LONGEST_ADDRESS);
            http.setResponseHeaderSize(LONGEST_ADDRESS);
            Guard.mark(http);
        });
        // A request takes a thread once so much of it has arrived, or all: one that is sent slowly holds nobody up.
        config.jetty.modifyServer(server -> server.setHandler(
                new EagerContentHandler(new EagerContentHandler.RetainedContentLoaderFactory(AWAITED, FRAME, false))));
        config.jetty.modifyServletContextHandler(handler -> handler.setMaxFormKeys(FormEncoding.MOST_FIELDS));
        config.router.javaLangErrorHandler(Failures::answer);
        config.jetty.multipartConfig.maxFileSize(MOST_ARRIVING >> 20, SizeUnit.MB);
        config.jetty.multipartConfig.maxTotalRequestSize(MOST_UPLOADED >> 20, SizeUnit.MB);
        config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
        config.jsonMapper(new io.javalin.json.JavalinJackson(AnswerJson.mapper(), false));
        ownFiles(config, "style", "script", "fonts");
        librariesFiles(config);
        RoutesConfig routes = config.routes;
        routes.before(ctx -> TypedLengths.are(() -> site.reading().lengths()));
        routes.before(ctx -> Words.writeFor(() -> site.archive().conventions().in(LanguageChoice.of(ctx))));
        routes.before(new Guard(network)::check);
        if (site.readOnly()) {
            routes.before(ReadOnlyRoutes::check);
        }
        routes.before(ctx -> {
            if (Guard.changing(ctx)) {
                FormEncoding.check(ctx);
            }
        });
        RunningRecognitions recognitions = new RunningRecognitions(site.recogniser());
        config.events.serverStopping(recognitions::close);
        Pages.routes(routes, site, recognitions, network);
        new StudioPages(site, close).routes(routes);
        new Failures(site).routes(routes);
    }

    /** What holds for any server of this program. */
    static void general(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.http.maxRequestSize = MOST_TYPED;
        config.http.generateEtags = false;
    }

    /** Files that pages are drawn with. */
    static void ownFiles(JavalinConfig config, String... folders) {
        for (String folder : folders) {
            config.staticFiles.add(files -> {
                files.hostedPath = "/" + folder;
                files.directory = "/web/" + folder;
                files.location = Location.CLASSPATH;
                files.headers = Map.of("Cache-Control", "no-cache", "X-Content-Type-Options", "nosniff");
                textIsUtf8(files);
            });
        }
    }

    private static void librariesFiles(JavalinConfig config) {
        config.staticFiles.add(files -> {
            files.hostedPath = "/webjars";
            files.directory = "META-INF/resources/webjars";
            files.location = Location.CLASSPATH;
            files.headers = Map.of("Cache-Control", "max-age=31622400");
            textIsUtf8(files);
        });
    }

    /** Loads what a server is made of, by making one that is never started; so that it can be done beside other work of a start. */
    public static void loadAhead() {
        Javalin.create(config -> {
            general(config);
            config.startup.startupWatcherEnabled = false;
            librariesFiles(config);
        });
    }

    /** Texts are sent with their encoding, which a browser would otherwise take from the page that names them. */
    private static void textIsUtf8(StaticFileConfig files) {
        files.mimeTypes.add("text/css; charset=utf-8", "css");
        files.mimeTypes.add("text/javascript; charset=utf-8", "js");
        files.mimeTypes.add("text/plain; charset=utf-8", "txt");
    }

    @Override
    public void close() {
        try {
            network.close();
        } catch (IOException e) {
            LoggerFactory.getLogger(Server.class).warn("The studio network was not closed", e);
        }
        javalin.stop();
    }
}
