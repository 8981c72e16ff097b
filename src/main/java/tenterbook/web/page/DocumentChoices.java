package tenterbook.web.page;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.label.Coded;
import tenterbook.label.document.DocumentKind;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentSettings.Agreement;
import tenterbook.label.document.DocumentSettings.Disclosure;
import tenterbook.label.document.PageSize;

/** The settings of a document as the parameters of its page. All other parameters belong to a search for pieces. */
final class DocumentChoices {
    static final Set<String> NAMES = Set.of(
            "kind", "sheet", "party", "contact", "from", "until", "insurer", "terms", "text", "valued", "named",
            "buyers", "chosen");

    private final Map<String, List<String>> parameters;

    DocumentChoices(Map<String, List<String>> parameters) {
        this.parameters = parameters;
    }

    /** The one place where parameters become settings; paper that the kind is not set on gives way to the usual. */
    DocumentSettings settings() {
        return settings(Coded.find(DocumentKind.values(), one("kind"))
                .filter(DocumentKind.OF_PIECES::contains)
                .orElse(DocumentKind.OBJECT_ID));
    }

    DocumentSettings settings(DocumentKind kind) {
        return new DocumentSettings(
                kind,
                Coded.find(PageSize.values(), one("sheet"))
                        .filter(kind.pages()::contains)
                        .orElse(null),
                new Agreement(one("party"), given("contact"), one("from"), one("until"), one("insurer"), one("terms")),
                new Disclosure(given("valued"), given("named"), given("buyers")),
                one("text"));
    }

    /** Those that were given, for a link that goes on with {@code &}; begins with it where there are any. */
    String query() {
        return NAMES.stream()
                .sorted()
                .filter(this::given)
                .map(name -> "&" + name + "=" + PrintPages.encode(one(name)))
                .collect(Collectors.joining());
    }

    private boolean given(String name) {
        return !one(name).isEmpty();
    }

    private String one(String name) {
        List<String> values = parameters.getOrDefault(name, List.of());
        return values.isEmpty() ? "" : values.get(0);
    }
}
