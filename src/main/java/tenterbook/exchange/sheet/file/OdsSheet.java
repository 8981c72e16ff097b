package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Refusal;

/** Reads a sheet of an OpenDocument spreadsheet (OpenDocument 1.3, part 3, chapter 9) row by row, at most {@value #MOST_ROWS} rows. */
final class OdsSheet {
    /** Rows with something in them; a longer sheet is saved as CSV or xlsx. */
    static final int MOST_ROWS = 100_000;

    /** Most characters of one cell. */
    private static final int LONGEST = 1 << 20;

    private static final String OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";
    private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
    private static final String TEXT = "urn:oasis:names:tc:opendocument:xmlns:text:1.0";

    private final XMLStreamReader xml;
    private final SheetRow.Sink sink;
    private int number = 1;
    private int filled;

    private OdsSheet(XMLStreamReader xml, SheetRow.Sink sink) {
        this.xml = xml;
        this.sink = sink;
    }

    static void rows(Path file, Collection<String> names, SheetRow.Sink sink) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            String chosen = sheet(zip, names);
            read(zip, chosen, sink);
        } catch (XMLStreamException e) {
            throw SheetFile.unreadable(e);
        }
    }

    private static XMLStreamReader open(InputStream in) throws XMLStreamException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        return factory.createXMLStreamReader(in);
    }

    /** The name of the sheet to be read. */
    private static String sheet(ZipFile zip, Collection<String> names) throws IOException, XMLStreamException {
        String first = "";
        try (InputStream in = zip.getInputStream(zip.getEntry("content.xml"))) {
            XMLStreamReader xml = open(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT && is(xml, TABLE, "table")) {
                    String name = String.valueOf(xml.getAttributeValue(TABLE, "name"));
                    if (names.stream().anyMatch(name::equalsIgnoreCase)) {
                        return name;
                    }
                    first = first.isEmpty() ? name : first;
                }
            }
        }
        return first;
    }

    private static void read(ZipFile zip, String chosen, SheetRow.Sink sink) throws IOException, XMLStreamException {
        try (InputStream in = zip.getInputStream(zip.getEntry("content.xml"))) {
            XMLStreamReader xml = open(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT
                        && is(xml, TABLE, "table")
                        && chosen.equals(String.valueOf(xml.getAttributeValue(TABLE, "name")))) {
                    new OdsSheet(xml, sink).rows();
                    return;
                }
            }
        }
    }

    private static boolean is(XMLStreamReader xml, String space, String name) {
        return name.equals(xml.getLocalName()) && space.equals(xml.getNamespaceURI());
    }

    private void rows() throws XMLStreamException {
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT && is(xml, TABLE, "table")) {
                return;
            }
            if (event == XMLStreamConstants.START_ELEMENT && is(xml, TABLE, "table-row") && !row()) {
                return;
            }
        }
    }

    /** @return whether further rows are wanted */
    private boolean row() throws XMLStreamException {
        int repeated = count("number-rows-repeated");
        List<String> cells = new ArrayList<>();
        int blank = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT && is(xml, TABLE, "table-row")) {
                break;
            }
            if (event == XMLStreamConstants.START_ELEMENT
                    && (is(xml, TABLE, "table-cell") || is(xml, TABLE, "covered-table-cell"))) {
                int columns = count("number-columns-repeated");
                String text = cell();
                if (text.isBlank()) {
                    blank += columns;
                } else {
                    if ((long) cells.size() + blank + columns > SheetRow.MOST_COLUMNS) {
                        throw Refusal.of(
                                "import.too-many-columns",
                                "most",
                                SheetRow.MOST_COLUMNS,
                                "found",
                                cells.size() + blank + columns);
                    }
                    cells.addAll(Collections.nCopies(blank, ""));
                    cells.addAll(Collections.nCopies(columns, text));
                    blank = 0;
                }
            }
        }
        if (cells.isEmpty()) {
            number += repeated;
            return true;
        }
        for (int i = 0; i < repeated; i++) {
            if (++filled > MOST_ROWS) {
                throw Refusal.of("import.too-many-rows", "most", MOST_ROWS);
            }
            if (!sink.take(new SheetRow(number++, cells))) {
                return false;
            }
        }
        return true;
    }

    private int count(String attribute) {
        String repeated = xml.getAttributeValue(TABLE, attribute);
        try {
            return repeated == null ? 1 : Math.max(1, Math.min(1 << 24, Integer.parseInt(repeated)));
        } catch (NumberFormatException e) {
            throw SheetFile.unreadable(e);
        }
    }

    /** The text of the cell that begins here, read to its end. */
    private String cell() throws XMLStreamException {
        String type = xml.getAttributeValue(OFFICE, "value-type");
        String value = xml.getAttributeValue(OFFICE, "value");
        String day = xml.getAttributeValue(OFFICE, "date-value");
        String yes = xml.getAttributeValue(OFFICE, "boolean-value");
        String currency = xml.getAttributeValue(OFFICE, "currency");
        String text = paragraphs();
        if (type == null || type.equals("string") || type.equals("time")) {
            return text;
        }
        if (type.equals("date") && day != null) {
            return day.replaceFirst("T00:00(:00(\\.0+)?)?$", "");
        }
        if (type.equals("boolean") && yes != null) {
            return yes.equals("true") ? "yes" : "no";
        }
        return value == null ? text : number(type, value, currency);
    }

    private static String number(String type, String value, @Nullable String currency) {
        try {
            java.math.BigDecimal number = new java.math.BigDecimal(value);
            return switch (type) {
                case "percentage" -> CellNumber.plain(number.movePointRight(2)) + "%";
                case "currency" -> CellNumber.plain(number) + (currency == null ? "" : " " + currency);
                default -> CellNumber.plain(number);
            };
        } catch (NumberFormatException e) {
            throw SheetFile.unreadable(e);
        }
    }

    private String paragraphs() throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        int depth = 1;
        int remark = 0;
        boolean first = true;
        while (depth > 0) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
                if (remark > 0 || is(xml, OFFICE, "annotation")) {
                    remark++;
                } else if (is(xml, TEXT, "p")) {
                    text.append(first ? "" : "\n");
                    first = false;
                } else if (is(xml, TEXT, "s")) {
                    String spaces = xml.getAttributeValue(TEXT, "c");
                    text.append(" ".repeat(spaces == null ? 1 : Math.min(1000, Integer.parseInt(spaces))));
                } else if (is(xml, TEXT, "tab") || is(xml, TEXT, "line-break")) {
                    text.append(is(xml, TEXT, "tab") ? '\t' : '\n');
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
                remark = Math.max(0, remark - 1);
            } else if (event == XMLStreamConstants.CHARACTERS && remark == 0 && !first) {
                text.append(xml.getText());
                if (text.length() > LONGEST) {
                    throw Refusal.of("import.row-too-long", "most", LONGEST);
                }
            }
        }
        return text.toString();
    }
}
