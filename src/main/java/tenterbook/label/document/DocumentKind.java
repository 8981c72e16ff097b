package tenterbook.label.document;

import java.util.List;
import java.util.Locale;

/** What a document is for. */
public enum DocumentKind {
    OBJECT_ID("Object ID sheet", Dress.SHEET, true, PageSize.A4, PageSize.LETTER),
    LOAN_SCHEDULE("Loan schedule", Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    CONSIGNMENT_SCHEDULE("Consignment schedule", Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    PROVENANCE_CERTIFICATE("Certificate of provenance", Dress.SHEET, true, PageSize.A4, PageSize.LETTER),
    INSURANCE_LIST("Insurance list", Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    BENCH_SHEET("Bench sheet", Dress.BENCH, true, PageSize.A4, PageSize.LETTER),
    ARCHIVE_CARD("Archive card", Dress.CARD, true, PageSize.A6, PageSize.CARD),
    EXHIBITION_TEXT("Exhibition text", Dress.WALL, true, PageSize.A5, PageSize.A4, PageSize.LETTER);

    private final String word;
    private final Dress dress;
    private final boolean each;
    private final List<PageSize> pages;

    DocumentKind(String word, Dress dress, boolean each, PageSize... pages) {
        this.word = word;
        this.dress = dress;
        this.each = each;
        this.pages = List.of(pages);
    }

    /** As it stands in addresses and records, as in {@code loan-schedule}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Dress dress() {
        return dress;
    }

    /** Whether every piece has a document of its own; otherwise one document lists them all. */
    public boolean each() {
        return each;
    }

    /** The papers it can be set on, the usual one first. */
    public List<PageSize> pages() {
        return pages;
    }

    /** Parties, dates and terms are agreed in it. */
    public boolean agreed() {
        return this == LOAN_SCHEDULE || this == CONSIGNMENT_SCHEDULE;
    }

    /** The version of its words, kept with each paper issued. */
    public String template() {
        return code() + " 1";
    }

    @Override
    public String toString() {
        return word;
    }
}
