package tenterbook.documents;

import java.util.List;
import java.util.stream.Stream;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a document is for. */
public enum DocumentKind implements CodedChoice, Worded {
    OBJECT_ID("object-id", DocumentTheme.SHEET, true, PageSize.A4, PageSize.LETTER),
    LOAN_SCHEDULE("loan-schedule", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    CONSIGNMENT_SCHEDULE("consignment-schedule", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    PROVENANCE_CERTIFICATE("provenance-certificate", DocumentTheme.SHEET, true, PageSize.A4, PageSize.LETTER),
    INSURANCE_LIST("insurance-list", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    PRICE_LIST("price-list", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    PACKING_LIST("packing-list", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    CUSTOMS_LIST("customs-list", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    FAIR_CHECKLIST("fair-checklist", DocumentTheme.SHEET, false, PageSize.A4, PageSize.LETTER),
    BENCH_SHEET("bench-sheet", DocumentTheme.BENCH, true, PageSize.A4, PageSize.LETTER),
    ARCHIVE_CARD("archive-card", DocumentTheme.CARD, true, PageSize.A6, PageSize.CARD),
    EXHIBITION_TEXT("exhibition-text", DocumentTheme.WALL, true, PageSize.A5, PageSize.A4, PageSize.LETTER),
    /** Of an examination; all others are of pieces. */
    CONDITION_REPORT("condition-report", DocumentTheme.SHEET, true, PageSize.A4, PageSize.LETTER);

    /** Those that are made of pieces alone. */
    public static final List<DocumentKind> OF_PIECES =
            Stream.of(values()).filter(kind -> kind != CONDITION_REPORT).toList();

    private final String code;
    private final DocumentTheme dress;
    private final boolean each;
    private final List<PageSize> pages;

    DocumentKind(String code, DocumentTheme dress, boolean each, PageSize... pages) {
        this.code = code;
        this.dress = dress;
        this.each = each;
        this.pages = List.of(pages);
    }

    /** As it stands in addresses and records, as in {@code loan-schedule}. */
    @Override
    public String code() {
        return code;
    }

    public DocumentTheme dress() {
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

    /** Goods of a fair or an agreement are listed in it. */
    public boolean goods() {
        return this == PRICE_LIST || this == PACKING_LIST || this == CUSTOMS_LIST || this == FAIR_CHECKLIST;
    }

    /** The version of its words, kept with each paper issued. */
    public String template() {
        return code() + " 1";
    }

    @Override
    public Message word() {
        return Message.of("document.kind." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
