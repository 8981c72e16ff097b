package tenterbook.exchange;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Checks a proof as a stranger might, line by line, with nothing of the program and no JSON library. */
final class StrangersCheck {
    private StrangersCheck() {}

    private static String sha256(String text) throws Exception {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** The hash at the end of the chain; throws where anything does not fit. */
    static String check(byte[] file) throws Exception {
        String text = StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(file))
                .toString();
        int at = text.lastIndexOf("\n\"sha256\":\"") + 1;
        require(text.substring(at).equals("\"sha256\":\"" + sha256(text.substring(0, at)) + "\"\n}\n"), "sha256");
        List<String> publicDigests = new ArrayList<>();
        // Of an earlier revision, the digest of its link until that is shown.
        List<String> privateDigests = new ArrayList<>();
        StringBuilder rows = new StringBuilder();
        String previous = "0".repeat(64);
        for (String line : section(text, "earlier")) {
            Matcher row = Pattern.compile("\\[(\\d+),\"(.*)\",\"(.*)\"]").matcher(line);
            require(row.matches() && Integer.parseInt(row.group(1)) == publicDigests.size() + 1, line);
            rows.append(rows.isEmpty() ? "[" : ",").append(line);
            previous = null;
            publicDigests.add(row.group(2));
            privateDigests.add(row.group(3));
        }
        String before = rows.isEmpty() ? "" : sha256(rows + "]");
        for (String line : section(text, "chain")) {
            String chained = unquoted(line);
            require(member(chained, "sequence").equals(Integer.toString(publicDigests.size() + 1)), line);
            require(
                    (previous == null || member(chained, "previous_hash").equals(previous))
                            && member(chained, "before").equals(before),
                    line);
            before = "";
            previous = sha256(chained);
            publicDigests.add(member(chained, "public_digest"));
            privateDigests.add(member(chained, "private_digest"));
        }
        require(member(text.replace("\n", ""), "end_hash").equals(previous), "end_hash");
        for (String line : section(text, "parts")) {
            Matcher row = Pattern.compile("\\[(\\d+),\"(public|private|link)\",(\".*\")]")
                    .matcher(line);
            require(row.matches(), line);
            List<String> digests = row.group(2).equals("public") ? publicDigests : privateDigests;
            int index = Integer.parseInt(row.group(1)) - 1;
            String part = unquoted(row.group(3));
            require(sha256(part).equals(digests.get(index)), line);
            if (row.group(2).equals("link")) {
                privateDigests.set(index, part.substring(part.indexOf(',') + 2, part.length() - 2));
            }
        }
        return previous;
    }

    private static List<String> section(String text, String name) {
        String from = text.substring(text.indexOf("\n\"" + name + "\":[\n") + name.length() + 6);
        String inside = from.startsWith("],") ? "" : from.substring(0, from.indexOf("\n],\n"));
        return inside.isEmpty() ? List.of() : List.of(inside.split(",\n"));
    }

    private static String member(String json, String name) {
        Matcher member = Pattern.compile("[{,]\"" + name + "\":\"?([^\",}]*)").matcher(json);
        return member.find() ? member.group(1) : "";
    }

    private static String unquoted(String json) {
        return Pattern.compile("\\\\(u....|.)")
                .matcher(json.substring(1, json.length() - 1))
                .replaceAll(found -> {
                    String code = found.group(1);
                    int plain = "nrtbf".indexOf(code.charAt(0));
                    return Matcher.quoteReplacement(
                            code.length() > 1
                                    ? String.valueOf((char) Integer.parseInt(code.substring(1), 16))
                                    : plain < 0 ? code : String.valueOf("\n\r\t\b\f".charAt(plain)));
                });
    }

    private static void require(boolean holds, String where) {
        if (!holds) {
            throw new IllegalStateException("does not fit: " + where);
        }
    }
}
