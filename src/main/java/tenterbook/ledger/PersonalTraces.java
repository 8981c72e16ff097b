package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.TwoParts;

/**
 * Traces of a person in other records: fields with the identifier and the fields that belong to them, and private texts with
 * the identifier, a name or an address as whole words. Differences of white space, Unicode composition and, except for the
 * identifier, of case are ignored. A nickname or a part of a name is not found.
 */
final class PersonalTraces {
    private static final int SHORTEST = 2;
    /** Includes what Unicode counts as space but not as white space, such as the no-break space. */
    private static final Pattern SPACE = Pattern.compile("[\\s\\p{Z}\\x85\\x{200B}\\x{FEFF}]+");

    private final RecordKey person;
    private final Pattern names;
    private final Pattern identifier;

    /** @param names from the person's record; each line is a name of its own */
    PersonalTraces(RecordKey person, Collection<String> names) {
        this.person = person;
        String any = names.stream()
                .flatMap(String::lines)
                .map(line -> plain(line).strip())
                .filter(line -> line.length() >= SHORTEST)
                .distinct()
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
        this.names = Pattern.compile(
                any.isEmpty() ? "(?!)" : "(?<![\\p{L}\\p{N}])(?:" + any + ")(?![\\p{L}\\p{N}])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
        // Other identifiers may be ‘buyer-1-b’, ‘buyer-1.b’ or ‘Buyer-1’; a full stop before a space ends a sentence.
        this.identifier = Pattern.compile("(?<![\\p{L}\\p{N}_-])(?<![\\p{L}\\p{N}][.])"
                + Pattern.quote(plain(person.id()))
                + "(?![\\p{L}\\p{N}_-]|[.][\\p{L}\\p{N}])");
    }

    /** Of a person with the names of all versions of the record. */
    static PersonalTraces of(Kind<?> kind, RecordKey person, List<Revision> history) {
        List<String> names = new ArrayList<>();
        for (Revision revision : history) {
            ObjectNode record = RecordCodec.parsed(revision.json());
            kind.privacy().names().forEach(field -> names.add(record.path(field).asText("")));
        }
        return new PersonalTraces(person, names);
    }

    private static String plain(String text) {
        return SPACE.matcher(Normalizer.normalize(text, Normalizer.Form.NFC)).replaceAll(" ");
    }

    boolean in(String text) {
        String plain = plain(text);
        return names.matcher(plain).find() || identifier.matcher(plain).find();
    }

    /** As {@link #in}, also for form-encoded text. */
    boolean inDraft(String text) {
        return in(text) || Stream.of(text.split("&")).anyMatch(pair -> in(decoded(pair)));
    }

    /** Decodes application/x-www-form-urlencoded; other text is unchanged. */
    private static String decoded(String pair) {
        try {
            return URLDecoder.decode(pair, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return pair;
        }
    }

    /**
     * Removes the traces from a whole record.
     *
     * @param fields pointers of its private fields; the rest is unchanged
     * @return whether there were any
     */
    boolean takeOut(ObjectNode record, Privacy privacy, Collection<String> fields) {
        boolean found = false;
        for (Map.Entry<String, List<String>> path : privacy.persons().entrySet()) {
            found |= persons(record, record, List.of(path.getKey().split("\\.")), "", path.getValue());
        }
        for (String pointer : fields) {
            if (isOwnName(privacy, pointer)) {
                continue;
            }
            int last = pointer.lastIndexOf('/');
            found |= texts(record.at(pointer.substring(0, last)), TwoParts.unescaped(pointer.substring(last + 1)));
        }
        if (found) {
            // The file has the same words, so its digest would confirm a guess.
            privacy.files().forEach(path -> record.remove(path.substring(0, (path + ".").indexOf('.'))));
        }
        return found;
    }

    /** Another person's own name or address stays, even where it is equal. */
    private static boolean isOwnName(Privacy privacy, String pointer) {
        return privacy.id() && privacy.names().contains(pointer.substring(1));
    }

    /** @param at the path to here, by which the accompanying fields are found in the same element */
    private boolean persons(ObjectNode record, JsonNode node, List<String> path, String at, List<String> along) {
        boolean found = false;
        String head = path.get(0);
        for (String token : head.equals("*") ? TwoParts.tokens(node) : List.of(head)) {
            JsonNode value = TwoParts.child(node, token).orElse(null);
            if (value == null) {
                continue;
            }
            String here = at + "/" + TwoParts.escaped(token);
            if (path.size() > 1) {
                found |= persons(record, value, path.subList(1, path.size()), here, along);
            } else if (value.asText().equals(person.id())) {
                remove(node, token);
                along.forEach(other -> removeAlong(record, here, other));
                found = true;
            }
        }
        return found;
    }

    private static void removeAlong(ObjectNode record, String here, String path) {
        String[] given = here.substring(1).split("/");
        String[] wanted = path.split("\\.");
        JsonNode parent = record;
        for (int i = 0; i < wanted.length; i++) {
            String token = wanted[i].equals("*") ? TwoParts.unescaped(given[i]) : wanted[i];
            if (i == wanted.length - 1) {
                remove(parent, token);
            } else {
                parent = TwoParts.child(parent, token).orElse(MissingNode.getInstance());
            }
        }
    }

    private boolean texts(JsonNode parent, String token) {
        JsonNode value = TwoParts.child(parent, token).orElse(null);
        if (value == null) {
            return false;
        }
        if (value.isTextual()) {
            boolean found = in(value.textValue());
            if (found) {
                remove(parent, token);
            }
            return found;
        }
        boolean found = false;
        for (String inner : TwoParts.tokens(value)) {
            found |= texts(value, inner);
        }
        return found;
    }

    /** A list keeps a null in the place of an element, so that pointers stay valid. */
    private static void remove(JsonNode parent, String token) {
        if (parent instanceof ObjectNode object) {
            object.remove(token);
        } else if (parent instanceof ArrayNode list) {
            list.set(Integer.parseInt(token), TextNode.valueOf(""));
        }
    }

    /** Pointers of texts in a record that still have a name. */
    Collection<String> left(JsonNode record, Privacy privacy) {
        Collection<String> left = new TreeSet<>();
        left(record, "", left);
        left.removeIf(pointer -> isOwnName(privacy, pointer));
        return left;
    }

    private void left(JsonNode node, String at, Collection<String> left) {
        if (node.isTextual() && in(node.textValue())) {
            left.add(at);
        }
        for (String token : TwoParts.tokens(node)) {
            TwoParts.child(node, token).ifPresent(inner -> left(inner, at + "/" + TwoParts.escaped(token), left));
        }
    }
}
