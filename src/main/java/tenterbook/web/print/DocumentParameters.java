package tenterbook.web.print;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentSettings.Agreement;
import tenterbook.documents.DocumentSettings.Disclosure;
import tenterbook.documents.PageSize;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.web.page.Address;
import tenterbook.web.page.LanguageChoice;
import tenterbook.words.Language;

/** The settings of a document as the parameters of its page. All other parameters belong to a search for pieces. */
public final class DocumentParameters {
    static final Set<String> NAMES = Set.of(
            "kind",
            "sheet",
            "party",
            "contact",
            "from",
            "until",
            "insurer",
            "terms",
            "text",
            "valued",
            "named",
            "buyers",
            "chosen",
            "find",
            "agreement",
            "fair",
            "purpose",
            "language",
            Preview.SHOWN);

    private final Map<String, List<String>> parameters;

    public DocumentParameters(Map<String, List<String>> parameters) {
        this.parameters = parameters;
    }

    /** Where the kind cannot be set on the paper chosen, its usual paper is taken; where no language is chosen, that of the page. */
    public DocumentSettings settings() {
        return settings(CodedChoice.find(DocumentKind.values(), one("kind"))
                .filter(DocumentKind.OF_PIECES::contains)
                .orElse(DocumentKind.OBJECT_ID));
    }

    public DocumentSettings settings(DocumentKind kind) {
        return new DocumentSettings(
                kind,
                CodedChoice.find(PageSize.values(), one("sheet"))
                        .filter(kind.pages()::contains)
                        .orElse(null),
                new Agreement(
                        one("party"),
                        given("contact"),
                        one("from"),
                        one("until"),
                        one("insurer"),
                        one("terms"),
                        one("agreement")),
                new Disclosure(given("valued"), given("named"), given("buyers")),
                one("text"),
                new DocumentSettings.Shipment(one("fair"), one("purpose")),
                Language.of(one("language")).orElseGet(LanguageChoice::current));
    }

    /** Those that were given, for a link that goes on with {@code &}; begins with it where there are any. */
    public String query() {
        List<Map.Entry<String, String>> given = NAMES.stream()
                .sorted()
                .filter(name -> given(name) && !name.equals(Preview.SHOWN))
                .map(name -> Map.entry(name, one(name)))
                .toList();
        return given.isEmpty() ? "" : "&" + Address.query(given);
    }

    /** The parameters of a search for pieces. */
    Map<String, List<String>> search() {
        Map<String, List<String>> search = new HashMap<>(parameters);
        search.keySet().removeAll(NAMES);
        search.remove("pieces");
        return search;
    }

    private boolean given(String name) {
        return !one(name).isEmpty();
    }

    private String one(String name) {
        List<String> values = parameters.getOrDefault(name, List.of());
        return values.isEmpty() ? "" : values.get(0);
    }
}
