package tenterbook.scenario;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** An HTTP/1.1 client (RFC 9112) on a plain socket: it sends any header and any path, and one request per connection. */
final class Client {
    private final int port;
    private final Dial dial;

    Client(int port) {
        this(port, to -> new Socket(InetAddress.getByName("127.0.0.1"), to));
    }

    Client(int port, Dial dial) {
        this.port = port;
        this.dial = dial;
    }

    /** How a port of this computer is reached. */
    @FunctionalInterface
    interface Dial {
        Socket to(int port) throws IOException;
    }

    int port() {
        return port;
    }

    /** A file within a form. */
    record Part(String field, String fileName, byte[] bytes) {}

    Answer get(String path, String... headers) throws IOException {
        return send("GET", path, new byte[0], headers);
    }

    /** A form as a browser posts it; names and values in turn. */
    Answer post(String path, String... namesAndValues) throws IOException {
        return send(
                "POST",
                path,
                form(namesAndValues).getBytes(StandardCharsets.US_ASCII),
                "Content-Type",
                "application/x-www-form-urlencoded");
    }

    static String form(String... namesAndValues) {
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            body.append(i == 0 ? "" : "&")
                    .append(URLEncoder.encode(namesAndValues[i], StandardCharsets.UTF_8))
                    .append('=')
                    .append(URLEncoder.encode(namesAndValues[i + 1], StandardCharsets.UTF_8));
        }
        return body.toString();
    }

    Answer postJson(String path, String json) throws IOException {
        return send("POST", path, json.getBytes(StandardCharsets.UTF_8), "Content-Type", "application/json");
    }

    /** A form with files, as a browser posts it without scripts (RFC 7578). */
    Answer postFiles(String path, List<Part> files, String... namesAndValues) throws IOException {
        return postFiles(path, files, List.of(), namesAndValues);
    }

    /** @param headers names and values in turn */
    Answer postFiles(String path, List<Part> files, List<String> headers, String... namesAndValues) throws IOException {
        String boundary = "----tenter7117";
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            body.writeBytes(("--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + namesAndValues[i]
                            + "\"\r\n\r\n" + namesAndValues[i + 1] + "\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        for (Part file : files) {
            body.writeBytes(
                    ("--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + file.field + "\"; filename=\""
                                    + file.fileName + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
                            .getBytes(StandardCharsets.UTF_8));
            body.writeBytes(file.bytes);
            body.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
        }
        body.writeBytes(("--" + boundary + "--\r\n").getBytes(StandardCharsets.US_ASCII));
        List<String> all = new ArrayList<>(headers);
        all.add("Content-Type");
        all.add("multipart/form-data; boundary=" + boundary);
        return send("POST", path, body.toByteArray(), all.toArray(String[]::new));
    }

    /** @param headers names and values in turn; a Host given here takes the place of the usual one */
    Answer send(String method, String path, byte[] body, String... headers) throws IOException {
        StringBuilder head = new StringBuilder(method + " " + path + " HTTP/1.1\r\nConnection: close\r\n");
        boolean host = false;
        for (int i = 0; i < headers.length; i += 2) {
            head.append(headers[i]).append(": ").append(headers[i + 1]).append("\r\n");
            host |= headers[i].equalsIgnoreCase("Host");
        }
        if (!host) {
            head.append("Host: 127.0.0.1:").append(port).append("\r\n");
        }
        if (!method.equals("GET")) {
            head.append("Content-Length: ").append(body.length).append("\r\n");
        }
        try (Socket socket = dial.to(port)) {
            socket.setSoTimeout(60_000);
            OutputStream out = socket.getOutputStream();
            IOException broken = null;
            try {
                out.write(head.append("\r\n").toString().getBytes(StandardCharsets.UTF_8));
                out.write(body);
                out.flush();
            } catch (IOException e) {
                // A server may refuse a large body before the end of it; its answer is then still to be read.
                broken = e;
            }
            try {
                return read(new BufferedInputStream(socket.getInputStream()), method);
            } catch (IOException e) {
                if (broken != null) {
                    e.addSuppressed(broken);
                }
                throw e;
            }
        }
    }

    private static Answer read(InputStream in, String method) throws IOException {
        String[] first = line(in).split(" ", 3);
        if (first.length < 2) {
            throw new IOException("The connection ended before an answer");
        }
        int status = Integer.parseInt(first[1]);
        Map<String, List<String>> headers = new LinkedHashMap<>();
        for (String line = line(in); !line.isEmpty(); line = line(in)) {
            int colon = line.indexOf(':');
            headers.computeIfAbsent(line.substring(0, colon).toLowerCase(Locale.ROOT), name -> new ArrayList<>())
                    .add(line.substring(colon + 1).strip());
        }
        if (method.equals("HEAD") || status == 204 || status == 304) {
            return new Answer(status, headers, new byte[0]);
        }
        if (headers.getOrDefault("transfer-encoding", List.of()).contains("chunked")) {
            return new Answer(status, headers, chunks(in));
        }
        List<String> length = headers.get("content-length");
        byte[] body = length == null ? in.readAllBytes() : in.readNBytes(Integer.parseInt(length.get(0)));
        if (length != null && body.length != Integer.parseInt(length.get(0))) {
            throw new IOException("The answer ended early");
        }
        return new Answer(status, headers, body);
    }

    private static byte[] chunks(InputStream in) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (int size = Integer.parseInt(line(in).strip(), 16);
                size > 0;
                size = Integer.parseInt(line(in).strip(), 16)) {
            body.writeBytes(in.readNBytes(size));
            line(in);
        }
        return body.toByteArray();
    }

    private static String line(InputStream in) throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int b = in.read(); b >= 0 && b != '\n'; b = in.read()) {
            line.write(b);
        }
        return line.toString(StandardCharsets.UTF_8).replaceFirst("\r$", "");
    }
}
