package tenterbook.web.form;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Part;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * What is sent is UTF-8: JSON by RFC 8259, section 8.1, and a form without files by the URL Standard, section 5.1. Other bytes
 * are refused before they are read, since replacement characters would be stored as if they were typed.
 */
public final class FormEncoding {
    /** The most fields one form may have: those of some thousand photographs. */
    public static final int MOST_FIELDS = 20_000;

    private FormEncoding() {}

    /** @throws CharacterCodingException where the bytes are not UTF-8 */
    public static String utf8(byte[] bytes) throws CharacterCodingException {
        return StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(bytes))
                .toString();
    }

    /**
     * Reads the query, and the body where that is a form without files.
     *
     * @throws Refusal where one is not UTF-8
     * @throws TooManyFields where the body has more than {@link #MOST_FIELDS}
     */
    public static void check(Context ctx) {
        String query = ctx.queryString();
        String type = String.valueOf(ctx.contentType()).toLowerCase(Locale.ROOT);
        try {
            if (query != null) {
                utf8(unescaped(query.getBytes(StandardCharsets.UTF_8)));
            }
            if (type.startsWith("application/x-www-form-urlencoded")) {
                utf8(unescaped(ctx.bodyAsBytes()));
            }
        } catch (CharacterCodingException e) {
            throw new Refusal(Message.of("failure.not-utf8"), e);
        }
    }

    /**
     * The fields of a form, with files or without.
     *
     * @throws Refusal where one is not UTF-8
     */
    public static Map<String, List<String>> fields(Context ctx) {
        Map<String, List<String>> fields = ctx.formParamMap();
        if (ctx.isMultipartFormData()) {
            try {
                for (Part part : ctx.req().getParts()) {
                    if (part.getSubmittedFileName() == null) {
                        try (InputStream bytes = part.getInputStream()) {
                            utf8(bytes.readAllBytes());
                        }
                    }
                }
            } catch (CharacterCodingException e) {
                throw new Refusal(Message.of("failure.not-utf8"), e);
            } catch (IOException | ServletException e) {
                throw new IllegalStateException("The form that was just read cannot be read again", e);
            }
        }
        return fields;
    }

    /** The fields of an HTML form post, in order. */
    public static Map<String, List<String>> decoded(String body) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        for (String pair : body.split("&")) {
            if (!pair.isEmpty()) {
                String[] sides = pair.split("=", 2);
                fields.computeIfAbsent(decode(sides[0]), name -> new ArrayList<>())
                        .add(sides.length > 1 ? decode(sides[1]) : "");
            }
        }
        return fields;
    }

    private static String decode(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    /** Uploaded files of a form that was sent without scripts. */
    public static List<UploadedFile> files(Context ctx, String field) {
        return ctx.isMultipart()
                ? ctx.uploadedFiles(field).stream()
                        .filter(file -> file.size() > 0)
                        .toList()
                : List.of();
    }

    /** Decodes %FF; a percent sign without two hexadecimal digits stays. */
    private static byte[] unescaped(byte[] form) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(form.length);
        int fields = 1;
        for (int i = 0; i < form.length; i++) {
            fields += form[i] == '&' ? 1 : 0;
            if (fields > MOST_FIELDS) {
                throw new TooManyFields();
            }
            int high = form[i] == '%' && i + 2 < form.length ? Character.digit(form[i + 1], 16) : -1;
            int low = high < 0 ? -1 : Character.digit(form[i + 2], 16);
            bytes.write(low < 0 ? form[i] : high << 4 | low);
            i += low < 0 ? 0 : 2;
        }
        return bytes.toByteArray();
    }
}
