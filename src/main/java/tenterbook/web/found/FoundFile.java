package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tenterbook.exchange.sheet.file.FormulaText;
import tenterbook.search.find.FoundNumbers;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;

/**
 * Everything that a search finds, not only a page of it, as a file: CSV (RFC 4180) for a spreadsheet, JSON for programs. What tells
 * of a person or of money leaves only where {@code private} is asked for. Written while it is read.
 */
public final class FoundFile {
    private static final JsonFactory JSON = new JsonFactory();

    /** Spreadsheets take a file without it for one in an older encoding. */
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final Site site;

    public FoundFile(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/found.csv", this::csv);
        routes.get("/api/found", this::json);
    }

    /**
     * @param columns that are written, the number first
     * @param leftOut asked for and private
     */
    private record Asked(FoundNumbers found, List<Column> columns, List<Column> leftOut) {}

    private Asked asked(Context ctx) {
        PieceQuery query = site.index().query(ctx.queryParamMap());
        List<Column> columns =
                new ArrayList<>(ViewChoice.read(ctx.queryParamMap()).shownColumns());
        columns.remove(Column.NUMBER);
        columns.add(0, Column.NUMBER);
        boolean all = "yes".equals(ctx.queryParam("private"));
        List<Column> leftOut =
                columns.stream().filter(column -> !all && column.isPrivate()).toList();
        columns.removeAll(leftOut);
        return new Asked(site.index().numbers(query, Integer.MAX_VALUE), columns, leftOut);
    }

    private void csv(Context ctx) throws IOException {
        Asked asked = asked(ctx);
        ctx.contentType("text/csv; charset=utf-8");
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"pieces-" + site.today() + ".csv\"");
        Writer out = new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8);
        out.write(BYTE_ORDER_MARK);
        CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180);
        csv.printRecord(asked.columns.stream().flatMap(FoundFile::headings).toList());
        new Subjects(site).each(asked.found.numbers(), asked.columns, subject -> {
            try {
                csv.printRecord(asked.columns.stream()
                        .flatMap(column -> cells(column, column.of(subject)))
                        .toList());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        csv.flush();
    }

    private static Stream<String> headings(Column column) {
        if (!column.amount()) {
            return Stream.of(column.label());
        }
        return Stream.of(
                column.label(),
                w(
                        "found.file-from",
                        "column",
                        column.label(),
                        "unit",
                        column.symbol().isEmpty() ? "none" : column.symbol()),
                w(
                        "found.file-to",
                        "column",
                        column.label(),
                        "unit",
                        column.symbol().isEmpty() ? "none" : column.symbol()));
    }

    /** Unknown is an empty cell: in a file, 'not recorded' would be a text like any other. */
    private static Stream<String> cells(Column column, Cell cell) {
        return column.amount()
                ? Stream.of(FormulaText.written(cell.text()), cell.from(), cell.to())
                : Stream.of(FormulaText.written(cell.text()));
    }

    private void json(Context ctx) throws IOException {
        Asked asked = asked(ctx);
        ctx.contentType("application/json");
        ctx.header("Cache-Control", "no-store");
        JsonGenerator json = JSON.createGenerator(ctx.outputStream(), JsonEncoding.UTF8);
        json.writeStartObject();
        json.writeNumberField("total", asked.found.total());
        json.writeNumberField("behind", asked.found.behind());
        words(json, "leftOut", asked.leftOut.stream().map(Column::word).toList());
        json.writeArrayFieldStart("columns");
        for (Column column : asked.columns) {
            json.writeStartObject();
            json.writeStringField("name", column.word());
            json.writeStringField("label", column.label());
            if (!column.symbol().isEmpty()) {
                json.writeStringField("unit", column.symbol().isEmpty() ? "none" : column.symbol());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("pieces");
        new Subjects(site).each(asked.found.numbers(), asked.columns, subject -> {
            try {
                row(json, asked.columns, subject);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        json.writeEndArray();
        json.writeEndObject();
        json.flush();
    }

    /** What is not recorded is left out. */
    private static void row(JsonGenerator json, List<Column> columns, Subject subject) throws IOException {
        json.writeStartObject();
        json.writeStringField(Column.NUMBER.word(), subject.number());
        json.writeObjectFieldStart("values");
        for (Column column : columns) {
            Cell cell = column.of(subject);
            if (column == Column.NUMBER || !cell.recorded()) {
                continue;
            }
            json.writeObjectFieldStart(column.word());
            json.writeStringField("text", cell.text());
            end(json, "from", cell.from());
            end(json, "to", cell.to());
            if (!cell.several().isEmpty()) {
                words(json, "several", cell.several());
            }
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    /** A number, or a day as a text; nothing for an open end. */
    private static void end(JsonGenerator json, String name, String end) throws IOException {
        if (end.indexOf('-') > 0) {
            json.writeStringField(name, end);
        } else if (!end.isEmpty()) {
            json.writeNumberField(name, new BigDecimal(end));
        }
    }

    private static void words(JsonGenerator json, String name, List<String> words) throws IOException {
        json.writeArrayFieldStart(name);
        for (String word : words) {
            json.writeString(word);
        }
        json.writeEndArray();
    }
}
