package tenterbook.label.document;

import java.util.List;
import java.util.Locale;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a document is for. */
public enum DocumentKind implements Worded {
    OBJECT_ID(Dress.SHEET, true, PageSize.A4, PageSize.LETTER),
    LOAN_SCHEDULE(Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    CONSIGNMENT_SCHEDULE(Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    PROVENANCE_CERTIFICATE(Dress.SHEET, true, PageSize.A4, PageSize.LETTER),
    INSURANCE_LIST(Dress.SHEET, false, PageSize.A4, PageSize.LETTER),
    BENCH_SHEET(Dress.BENCH, true, PageSize.A4, PageSize.LETTER),
    ARCHIVE_CARD(Dress.CARD, true, PageSize.A6, PageSize.CARD),
    EXHIBITION_TEXT(Dress.WALL, true, PageSize.A5, PageSize.A4, PageSize.LETTER);

    private final Dress dress;
    private final boolean each;
    private final List<PageSize> pages;

    DocumentKind(Dress dress, boolean each, PageSize... pages) {
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
    public Message word() {
        return Message.of("document.kind." + code());
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
