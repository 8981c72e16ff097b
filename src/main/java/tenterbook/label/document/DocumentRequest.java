package tenterbook.label.document;

import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import tenterbook.words.Listing;
import tenterbook.words.Refusal;

/**
 * Which document, on what, and what the maker chose or typed for it. Texts may be empty: then the document says 'not recorded'
 * or leaves them out.
 *
 * @param party borrower, gallery or buyer: the name of a party of the archive, or as typed
 * @param contact whether that party's contact is printed, where the archive holds one
 * @param from when a loan or consignment begins, as typed
 * @param until when it ends, as typed
 * @param insurer who insures, as typed
 * @param terms as typed; an empty line parts paragraphs
 * @param text words of the maker for a wall or a certificate, as typed
 * @param valued whether prices and values are printed; an insurance list always has them
 * @param named whether galleries, museums and places where a piece is or was are named
 * @param buyers whether buyers are named as well; otherwise they are private owners
 * @param today the day it is made, printed as its date
 */
public record DocumentRequest(
        DocumentKind kind,
        PageSize page,
        String party,
        boolean contact,
        String from,
        String until,
        String insurer,
        String terms,
        String text,
        boolean valued,
        boolean named,
        boolean buyers,
        LocalDate today) {
    public DocumentRequest {
        Objects.requireNonNull(kind, "A request names the kind of document");
        Objects.requireNonNull(today, "A request names its day");
        page = page == null ? kind.pages().get(0) : page;
        if (!kind.pages().contains(page)) {
            throw Refusal.of("document.refused.page", "kind", kind, "pages", Listing.or(kind.pages()), "found", page);
        }
        party = text(party);
        from = text(from);
        until = text(until);
        insurer = text(insurer);
        terms = text(terms);
        text = text(text);
    }

    /** Nothing chosen and nothing typed, on the usual paper. */
    public static DocumentRequest of(DocumentKind kind, LocalDate today) {
        return new DocumentRequest(kind, null, "", false, "", "", "", "", "", false, false, false, today);
    }

    public DocumentRequest on(PageSize other) {
        return new DocumentRequest(
                kind, other, party, contact, from, until, insurer, terms, text, valued, named, buyers, today);
    }

    public DocumentRequest showing(boolean values, boolean names) {
        return new DocumentRequest(
                kind, page, party, contact, from, until, insurer, terms, text, values, names, buyers, today);
    }

    public DocumentRequest agreed(
            String with, boolean withContact, String begin, String end, String insures, String conditions) {
        return new DocumentRequest(
                kind, page, with, withContact, begin, end, insures, conditions, text, valued, named, buyers, today);
    }

    public DocumentRequest saying(String words) {
        return new DocumentRequest(
                kind, page, party, contact, from, until, insurer, terms, words, valued, named, buyers, today);
    }

    /** The choices by name, kept with the paper. */
    public Map<String, String> choices() {
        Map<String, String> choices = new TreeMap<>();
        choices.put("contact", Boolean.toString(contact));
        choices.put("valued", Boolean.toString(valued));
        choices.put("named", Boolean.toString(named));
        choices.put("buyers", Boolean.toString(buyers));
        return choices;
    }

    private static String text(String text) {
        return text == null ? "" : text.strip();
    }
}
