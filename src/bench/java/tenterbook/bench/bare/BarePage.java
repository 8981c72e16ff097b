package tenterbook.bench.bare;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.Utf8ByteOutput;
import io.javalin.Javalin;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.store.FSDirectory;

/**
 * The least that a program of these libraries does for a first page: a server (Javalin), an open database (SQLite) asked for names, an
 * open index (Lucene) asked for all documents, and a page (JTE). Ended by a signal.
 */
public final class BarePage {
    private BarePage() {}

    /** @param args the folder of an archive, and a port */
    public static void main(String[] args) throws Exception {
        Path archive = Path.of(args[0]);
        Connection ledger = DriverManager.getConnection("jdbc:sqlite:" + archive.resolve("ledger.db"));
        IndexSearcher index =
                new IndexSearcher(DirectoryReader.open(FSDirectory.open(newest(archive.resolve("index")))));
        TemplateEngine pages = TemplateEngine.createPrecompiled(
                null, ContentType.Html, BarePage.class.getClassLoader(), "tenterbook.bench.bare");
        Javalin.create(config -> {
                    config.startup.showJavalinBanner = false;
                    config.startup.showOldJavalinVersionWarning = false;
                    config.routes.get("/", ctx -> {
                        List<String> names = names(ledger);
                        names.add(index.search(new MatchAllDocsQuery(), 24).totalHits + " documents");
                        Utf8ByteOutput output = new Utf8ByteOutput();
                        pages.render("bare.jte", Map.of("names", names), output);
                        ctx.contentType("text/html; charset=utf-8");
                        ctx.result(output.toByteArray());
                    });
                })
                .start("127.0.0.1", Integer.parseInt(args[1]));
    }

    private static Path newest(Path index) throws IOException {
        try (Stream<Path> folders = Files.list(index)) {
            return folders.filter(Files::isDirectory).max(Path::compareTo).orElse(index);
        }
    }

    private static List<String> names(Connection ledger) throws java.sql.SQLException {
        List<String> names = new ArrayList<>();
        try (var statement = ledger.createStatement();
                ResultSet row = statement.executeQuery("SELECT number || ' ' || title FROM pieces LIMIT 24")) {
            while (row.next()) {
                names.add(row.getString(1));
            }
        }
        return names;
    }
}
