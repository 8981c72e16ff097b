package tenterbook.web.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes the parameters of an address. */
public final class Address {
    private Address() {}

    public static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** As in {@code board=B02&page=2}; empty without parameters. */
    public static String query(Collection<Map.Entry<String, String>> parameters) {
        return parameters.stream()
                .map(each -> encoded(each.getKey()) + "=" + encoded(each.getValue()))
                .collect(Collectors.joining("&"));
    }

    /** A parameter with several values stands once for each. */
    public static String query(Map<String, List<String>> parameters) {
        return query(parameters.entrySet().stream()
                .flatMap(each -> each.getValue().stream().map(value -> Map.entry(each.getKey(), value)))
                .toList());
    }
}
