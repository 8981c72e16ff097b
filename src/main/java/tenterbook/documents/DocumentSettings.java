package tenterbook.documents;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.labelling.StoredSettings;
import tenterbook.words.Language;
import tenterbook.words.Listing;
import tenterbook.words.Refusal;

/**
 * Every choice of a print of documents: which document, on what, and what the maker chose or typed for it. An empty text is
 * left out or printed as 'not recorded'. An issued paper stores them in this form, under the names written here.
 *
 * @param page the usual one of the kind where null
 * @param agreement nothing agreed where null
 * @param disclosure nothing disclosed where null
 * @param text words of the maker for a wall or a certificate, as typed
 * @param shipment no fair and no purpose where null
 * @param language of all that the program writes; English where null, as in papers from before there was another
 */
public record DocumentSettings(
        @JsonProperty("kind") DocumentKind kind,
        @JsonProperty("page") PageSize page,
        @JsonProperty("agreement") Agreement agreement,
        @JsonProperty("disclosure") Disclosure disclosure,
        @JsonProperty("text") String text,
        @JsonProperty("shipment") @Nullable Shipment shipment,
        @JsonProperty("language") Language language) {
    public static final String STORED = "document";

    /**
     * What two parties agree.
     *
     * @param party borrower, gallery or buyer: the name of a party of the archive, or as typed
     * @param contact whether that party's contact is printed, where the archive holds one
     * @param from when a loan or consignment begins, as typed
     * @param until when it ends, as typed
     * @param insurer who insures, as typed
     * @param terms as typed; an empty line parts paragraphs
     * @param id the agreement of the archive that fills what is not typed; empty where none is chosen
     */
    public record Agreement(
            @JsonProperty("party") String party,
            @JsonProperty("contact") boolean contact,
            @JsonProperty("from") String from,
            @JsonProperty("until") String until,
            @JsonProperty("insurer") String insurer,
            @JsonProperty("terms") String terms,

            @JsonProperty("id") @JsonInclude(JsonInclude.Include.NON_EMPTY)
            String id) {
        public static final Agreement NONE = new Agreement("", false, "", "", "", "", "");

        public Agreement {
            party = stripped(party);
            from = stripped(from);
            until = stripped(until);
            insurer = stripped(insurer);
            terms = stripped(terms);
            id = stripped(id);
        }
    }

    /**
     * What is printed that is otherwise withheld.
     *
     * @param values prices and values; an insurance list always has them
     * @param names galleries, museums and places where a piece is or was
     * @param buyers buyers as well; otherwise they are private owners
     */
    public record Disclosure(
            @JsonProperty("values") boolean values,
            @JsonProperty("names") boolean names,
            @JsonProperty("buyers") boolean buyers) {
        public static final Disclosure NONE = new Disclosure(false, false, false);
    }

    /**
     * Where listed goods go.
     *
     * @param fair of the archive; empty where none is chosen
     * @param purpose for customs, by its code; empty where that of the fair holds
     */
    public record Shipment(
            @JsonProperty("fair") @JsonInclude(JsonInclude.Include.NON_EMPTY)
            String fair,

            @JsonProperty("purpose") @JsonInclude(JsonInclude.Include.NON_EMPTY)
            String purpose) {
        public Shipment {
            fair = stripped(fair);
            purpose = stripped(purpose);
        }

        boolean nothing() {
            return fair.isEmpty() && purpose.isEmpty();
        }
    }

    public DocumentSettings {
        Objects.requireNonNull(kind, "Document settings name the kind of document");
        page = page == null ? kind.pages().get(0) : page;
        if (!kind.pages().contains(page)) {
            throw Refusal.of("document.refused.page", "kind", kind, "pages", Listing.or(kind.pages()), "found", page);
        }
        agreement = agreement == null ? Agreement.NONE : agreement;
        disclosure = disclosure == null ? Disclosure.NONE : disclosure;
        text = stripped(text);
        shipment = shipment == null || shipment.nothing() ? null : shipment;
        language = language == null ? Language.ENGLISH : language;
    }

    /** In English, without a fair and a purpose for customs. */
    public DocumentSettings(DocumentKind kind, PageSize page, Agreement agreement, Disclosure disclosure, String text) {
        this(kind, page, agreement, disclosure, text, null, Language.ENGLISH);
    }

    /** Nothing chosen and nothing typed, on the usual paper. */
    public static DocumentSettings of(DocumentKind kind) {
        return new DocumentSettings(kind, null, null, null, "");
    }

    /**
     * Those of an issued document.
     *
     * @throws IllegalArgumentException where it is no document or its settings are not understood
     */
    public static DocumentSettings of(IssuedPaper paper) {
        return StoredSettings.read(paper, STORED, DocumentSettings.class);
    }

    /** The fair of the archive that it is for; empty where none is chosen. */
    public String fair() {
        return shipment == null ? "" : shipment.fair();
    }

    public DocumentSettings on(PageSize other) {
        return new DocumentSettings(kind, other, agreement, disclosure, text, shipment, language);
    }

    public DocumentSettings in(Language other) {
        return new DocumentSettings(kind, page, agreement, disclosure, text, shipment, other);
    }

    private static String stripped(String text) {
        return text == null ? "" : text.strip();
    }
}
