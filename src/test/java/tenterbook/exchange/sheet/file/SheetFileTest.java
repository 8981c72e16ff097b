package tenterbook.exchange.sheet.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.words.Refusal;

/** Sheets as texts, whatever they were written in; no formula is run. */
class SheetFileTest {
    @TempDir
    Path folder;

    private List<List<String>> read(Path file, String... names) {
        List<List<String>> rows = new ArrayList<>();
        SheetFile.of(file).rows(List.of(names), row -> rows.add(row.cells()));
        return rows;
    }

    private Path text(String text, Charset charset) throws IOException {
        return Files.write(folder.resolve("sheet"), text.getBytes(charset));
    }

    private Path zip(String... namesAndTexts) throws IOException {
        Path file = folder.resolve("zipped");
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return file;
    }

    @Test
    void theEncodingIsToldFromTheBytes() throws IOException {
        Charset windows = Charset.forName("windows-1252");
        assertThat(read(text("número;preço\nV1;180 €\n", windows)))
                .containsExactly(List.of("número", "preço"), List.of("V1", "180 €"));
        assertThat(read(text("número;preço\nV1;180 €\n", StandardCharsets.UTF_8))
                        .get(0))
                .containsExactly("número", "preço");
        assertThat(read(text("\uFEFFnúmero;preço\nV1;2\n", StandardCharsets.UTF_8))
                        .get(0))
                .containsExactly("número", "preço");
        assertThat(read(text("número\tpreço\nV1\t2\n", StandardCharsets.UTF_16)).get(0))
                .containsExactly("número", "preço");
    }

    @Test
    void theSeparatorIsTheOneThatDividesTheRowsEvenly() throws IOException {
        assertThat(read(text("a;b\n1,5;2,5\n3,5;x\n", StandardCharsets.UTF_8)))
                .containsExactly(List.of("a", "b"), List.of("1,5", "2,5"), List.of("3,5", "x"));
        assertThat(read(text("a\tb\nfolded, clamped\t2\n", StandardCharsets.UTF_8)))
                .containsExactly(List.of("a", "b"), List.of("folded, clamped", "2"));
        assertThat(read(text("a,b\n\"x, \"\"y\"\"\nz\",2\n", StandardCharsets.UTF_8)))
                .containsExactly(List.of("a", "b"), List.of("x, \"y\"\nz", "2"));
        assertThat(read(text("sep=;\na;b,c\n", StandardCharsets.UTF_8))).containsExactly(List.of("a", "b,c"));
    }

    @Test
    void aFormulaInCsvIsTextAndSurvivesBeingWritten() throws IOException {
        List<String> nasty = List.of("=cmd|'/c calc'!A0", "+1", "-5", "@x", " =1+1", "'=x", "plain", "it's");
        Path file = folder.resolve("out.csv");
        try (OutputStream out = Files.newOutputStream(file)) {
            SheetWriter.csv(out, row -> row.accept(nasty));
        }
        assertThat(Files.readString(file)).contains("'=cmd", "'+1", "'-5", "'@x", "' =1+1", "''=x", ",plain,it's");
        assertThat(read(file)).containsExactly(nasty);
        assertThat(read(text("a,b\n=cmd,=1+1\n", StandardCharsets.UTF_8)).get(1))
                .containsExactly("=cmd", "=1+1");
    }

    @Test
    void xlsxIsWrittenAsTextsAndReadAgain() throws IOException {
        List<String> row = List.of("=cmd", "Ω &<>\"", "two\nlines", "", "+351 912");
        Path file = folder.resolve("out.xlsx");
        try (OutputStream out = Files.newOutputStream(file)) {
            SheetWriter.xlsx(out, Map.of("Pieces", to -> to.accept(row)));
        }
        assertThat(read(file)).containsExactly(row);
    }

    private static final String TYPES = """
            <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
            <Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>
            <Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>
            <Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>
            </Types>""";

    private static final String CELLS = """
            <?xml version="1.0" encoding="UTF-8"?>
            <worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>
            <row r="1"><c r="A1"><f>6*7</f><v>42</v></c><c r="B1" t="str"><f>CONCATENATE("a","b")</f><v>ab</v></c>
            <c r="C1" s="1"><v>45356</v></c><c r="D1" s="2"><v>0.7</v></c><c r="E1" s="3"><v>180.5</v></c>
            <c r="F1" t="b"><v>1</v></c><c r="G1"><v>0.30000000000000004</v></c><c r="I1" t="inlineStr"><is><t>=cmd</t></is></c></row>
            <row r="4"><c r="A4"><v>7</v></c></row>
            </sheetData></worksheet>""";

    private Path xlsx(String sheet) throws IOException {
        String main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        String rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        return zip(
                "[Content_Types].xml",
                TYPES,
                "xl/workbook.xml",
                "<workbook xmlns=\"%s\" xmlns:r=\"%s\"><sheets><sheet name=\"x\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"
                        .formatted(main, rel),
                "xl/_rels/workbook.xml.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\" Type=\"%s/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>"
                        .formatted(rel),
                "xl/styles.xml",
                "<styleSheet xmlns=\"%s\"><numFmts count=\"1\"><numFmt numFmtId=\"170\" formatCode=\"#,##0.00 [$€-816]\"/></numFmts><cellXfs count=\"4\"><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"9\"/><xf numFmtId=\"170\"/></cellXfs></styleSheet>"
                        .formatted(main),
                "xl/worksheets/sheet1.xml",
                sheet);
    }

    @Test
    void ofAFormulaTheStoredValueIsReadAndNumbersAsTheirFormatShowsThem() throws IOException {
        Path file = xlsx(CELLS);
        List<SheetRow> rows = new ArrayList<>();
        SheetFile.of(file).rows(List.of(), rows::add);
        assertThat(rows.get(0).cells())
                .containsExactly("42", "ab", "2024-03-05", "70%", "180.5 €", "yes", "0.3", "", "=cmd");
        assertThat(rows.get(1).number()).isEqualTo(4);
    }

    private static String ods(String tables) {
        return "<office:document-content xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"><office:body><office:spreadsheet>"
                + tables + "</office:spreadsheet></office:body></office:document-content>";
    }

    @Test
    void odsIsReadWithItsRepeatedCellsDatesAndCurrencies() throws IOException {
        Path file = zip("content.xml", ods("""
                <table:table table:name="Other"><table:table-row><table:table-cell><text:p>no</text:p></table:table-cell></table:table-row></table:table>
                <table:table table:name="Pieces"><table:table-row>
                <table:table-cell office:value-type="string"><office:annotation><text:p>a remark</text:p></office:annotation><text:p>two<text:s text:c="2"/>spaces</text:p><text:p>line</text:p></table:table-cell>
                <table:table-cell table:number-columns-repeated="2"/>
                <table:table-cell office:value-type="date" office:date-value="2024-03-05T00:00:00"><text:p>5/3/24</text:p></table:table-cell>
                <table:table-cell office:value-type="currency" office:currency="EUR" office:value="180.5"><text:p>x</text:p></table:table-cell>
                <table:table-cell table:formula="of:=6*7" office:value-type="float" office:value="42"><text:p>42</text:p></table:table-cell>
                <table:table-cell table:number-columns-repeated="16000"/></table:table-row>
                <table:table-row table:number-rows-repeated="1048000"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>
                </table:table>"""));
        assertThat(read(file, "pieces"))
                .containsExactly(List.of("two  spaces\nline", "", "", "2024-03-05", "180.5 EUR", "42"));
        assertThat(read(file)).containsExactly(List.of("no"));
    }

    @Test
    void ofOdsOnlyTheStatedNumberOfRowsIsRead() throws IOException {
        Path file = zip(
                "content.xml",
                ods(
                        "<table:table table:name=\"x\"><table:table-row table:number-rows-repeated=\"100001\"><table:table-cell><text:p>1</text:p></table:table-cell></table:table-row></table:table>"));
        int[] rows = {0};
        assertThatThrownBy(() -> SheetFile.of(file).rows(List.of(), row -> ++rows[0] > 0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("100000 rows");
        assertThat(rows[0]).isEqualTo(100_000);
    }

    /** A file that asks for another, on this computer or elsewhere (XXE): nothing of it is read, and nobody is asked. */
    @Test
    void whatAnEntityNamesIsNeitherReadNorFetched() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "SECRET");
        try (ServerSocket elsewhere = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            elsewhere.setSoTimeout(50);
            String away = "http://127.0.0.1:" + elsewhere.getLocalPort() + "/x";
            for (String address : List.of(secret.toUri().toString(), away)) {
                String head = "<!DOCTYPE a [<!ENTITY e SYSTEM \"%s\"><!ENTITY %% p SYSTEM \"%s\"> %%p;]>"
                        .formatted(address, address);
                String cell = "<table:table table:name=\"x\"><table:table-row><table:table-cell><text:p>V1&e;</text:p>"
                        + "</table:table-cell></table:table-row></table:table>";
                assertThat(cells(zip("content.xml", head + ods(cell)))).doesNotContain("SECRET");
                String sheet = CELLS.substring(CELLS.indexOf('>') + 1).replace("=cmd", "&e;");
                assertThat(cells(xlsx(head + sheet))).doesNotContain("SECRET");
            }
            assertThatThrownBy(elsewhere::accept).isInstanceOf(SocketTimeoutException.class);
        }
    }

    /** All there is to read, or the refusal. */
    private String cells(Path file) {
        try {
            return read(file).toString();
        } catch (Refusal e) {
            return e.getMessage();
        }
    }

    @Test
    void whatUnpacksToFarMoreThanASheetDoesIsRefusedBeforeItIsRead() throws IOException {
        Path file = folder.resolve("bomb");
        byte[] spaces = " ".repeat(1 << 20).getBytes(StandardCharsets.US_ASCII);
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(1);
            zip.putNextEntry(new ZipEntry("content.xml"));
            for (int i = 0; i <= UnpackedSize.FREE >> 20; i++) {
                zip.write(spaces);
            }
            zip.closeEntry();
        }
        assertThatThrownBy(() -> SheetFile.of(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("far more than a sheet does");
    }

    @Test
    void whatIsNoSheetIsRefusedWithASentence() throws IOException {
        assertThatThrownBy(() -> SheetFile.of(text("", StandardCharsets.UTF_8))).hasMessageContaining("is empty");
        assertThatThrownBy(() -> SheetFile.of(Files.write(folder.resolve("b"), new byte[] {1, 0, 2, 0})))
                .hasMessageContaining("none of them");
        assertThatThrownBy(() -> SheetFile.of(zip("x.txt", "y"))).hasMessageContaining("none of them");
        assertThatThrownBy(() -> SheetFile.of(Files.write(
                        folder.resolve("old.xls"), new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, 0, 0})))
                .hasMessageContaining(".xls");
        Path damaged = zip("xl/workbook.xml", "<workbook");
        assertThatThrownBy(() -> read(damaged)).isInstanceOf(Refusal.class).hasMessageContaining("cannot be read");
        Path broken = zip("content.xml", ods("<table:table><table:table-row>").substring(0, 300));
        assertThatThrownBy(() -> read(broken)).isInstanceOf(Refusal.class);
    }
}
