package tenterbook.web.device;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tenterbook.network.Rights;

/**
 * Which paths a device may ask for. What stands in no list is for 'everything' alone, so that a new page is closed until it is
 * named here; what concerns the devices themselves, and ending the program, is for nobody but this computer.
 */
final class PathRights {
    private static final Pattern FILES = any("/style/.*", "/script/.*", "/fonts/.*", "/webjars/.*");

    /** Without a pairing: the page on which one pairs, what it is drawn with, and the certificate that a device installs. */
    private static final Pattern STRANGERS = any("/pair", "/pair/authority\\.crt", "/style/.*", "/fonts/.*");

    private static final Pattern THIS_COMPUTER = any("/studio/devices(?:/.*)?", "/studio/close");

    private static final Pattern LOOKED_AT = any(
            "/",
            "/phone",
            "/pieces/[^/]+",
            "/pieces/[^/]+/photos/[^/]+(?:/place)?",
            "/pieces/[^/]+/(?:photographs|change)",
            "/photos/[0-9a-f]{64}/(?:small|medium|large|where)",
            "/boards(?:/[^/]+)?",
            "/clampings(?:/[^/]+(?:/layers)?)?",
            "/materials",
            "/cloths/[^/]+",
            "/lots/[^/]+",
            "/colours",
            "/dips",
            "/compare(?:/pieces)?",
            "/suggestions",
            "/figures",
            "/api/(?:pieces|boards|clampings|cloths|lots)(?:/[^/]+)?",
            "/api/(?:suggestions|understood|dips|openapi\\.json)");

    /** Forms: also looked at with GET. */
    private static final Pattern RECORDED = any(
            "/phone/photographs",
            "/photos",
            "/pieces",
            "/pieces/[^/]+/(?:edit|dye-again)",
            "/pieces/[^/]+/photos/[^/]+/(?:cloth|colours|colours/forget|calibrate|find-card|measure-again)",
            "/clampings",
            "/clampings/figures",
            "/clampings/[^/]+/edit",
            "/acts",
            "/acts/[^/]+(?:/done)?",
            "/drafts/(?:piece|clamping)(?:/[^/]*)?",
            "/discard-draft",
            "/api/pieces(?:/[^/]+(?:/photos)?)?",
            "/api/clampings(?:/[^/]+)?",
            "/api/acts/[^/]+");

    /** Of the same form as the pages of records, but empty forms. */
    private static final Pattern EMPTY_FORMS = any("/(?:boards|cloths|lots|clampings|pieces)/new");

    private PathRights() {}

    private static Pattern any(String... paths) {
        return Pattern.compile(List.of(paths).stream().collect(Collectors.joining("|", "(?:", ")")));
    }

    static boolean stranger(String path) {
        return matches(STRANGERS, path);
    }

    /** @param method of HTTP, in capitals */
    static boolean may(Rights rights, String method, String path) {
        if (matches(THIS_COMPUTER, path)) {
            return false;
        }
        if (rights == Rights.EVERYTHING || matches(STRANGERS, path) || path.equals("/language")) {
            return true;
        }
        boolean get = method.equals("GET") || method.equals("HEAD");
        boolean recording = rights == Rights.RECORD;
        if (matches(EMPTY_FORMS, path)) {
            return get && recording && (path.startsWith("/pieces/") || path.startsWith("/clampings/"));
        }
        if (get && (matches(LOOKED_AT, path) || matches(FILES, path))) {
            return true;
        }
        return recording && (get || method.equals("POST") || method.equals("PUT")) && matches(RECORDED, path);
    }

    private static boolean matches(Pattern paths, String path) {
        return paths.matcher(path).matches();
    }
}
