package tenterbook.search.index;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.lucene.document.BinaryDocValuesField;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.DoubleDocValuesField;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.SortedSetDocValuesField;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.Term;
import org.apache.lucene.util.BytesRef;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.Colours;
import tenterbook.facts.PieceFacts;
import tenterbook.measure.Digest;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.dip.DipTally;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PlainNumber;

/** The index entry of one piece. */
public final class PieceDocument {
    /** What the index holds and how; an index of another format is thrown away and rebuilt. */
    public static final String FORMAT = "16";

    public static final String NUMBER = "number";
    public static final String SQUASHED = "number.squashed";
    /** What the number may be shortened to; see {@link PlainNumber}. */
    public static final String PLAIN = "number.plain";

    public static final String BOARD = "board";
    public static final String ALL = "all";
    public static final String TITLE = "title";
    public static final String NAMED = "named";
    public static final String NUMBER_WORDS = "number.words";
    public static final String SUGGEST = "suggest";
    static final String CARD = "card";
    public static final String PASSAGES = "passages";
    public static final String PRINT = "print";
    public static final String NUMBERS = "numbers";
    public static final String SORT_NUMBER = "sort.number";
    public static final String SORT_TITLE = "sort.title";
    public static final String SORT_DAY = "sort.day";
    public static final String SORT_EXAMINED = "sort.examined";
    public static final String SORT_DIPS = "sort.dips";
    public static final String SORT_SIZE = "sort.size";
    public static final String SORT_PRICE = "sort.price";
    public static final String SORT_LIGHTNESS = "sort.lightness";
    public static final String SORT_CONTRAST = "sort.contrast";

    private final Document document = new Document();
    private final MessageDigest print = Digest.sha256();
    private final String number;

    private PieceDocument(PieceFacts facts, List<OutsideFacets.Given> given) {
        this.number = facts.piece().number().value();
        Colours colours = facts.colours();
        DipTally dips = facts.dips();
        words(facts, colours);
        facets(PieceFacets.of(facts, given));
        numbers(
                facts.piece(),
                PieceNumbers.of(facts.piece(), dips, colours.all(), colours.anything()),
                facts.recorded());
        sortNumber(SORT_LIGHTNESS, colours.lightness());
        sortNumber(SORT_CONTRAST, colours.contrast());
        facts.condition().lastLooked().ifPresent(when -> sortDay(SORT_EXAMINED, when));
        byte[] card = CardBytes.written(Cards.of(facts, dips, colours));
        print.update(card);
        document.add(new BinaryDocValuesField(CARD, new BytesRef(card)));
        document.add(new StoredField(PRINT, printed()));
    }

    public static PieceDocument of(PieceFacts facts, List<OutsideFacets.Given> given) {
        return new PieceDocument(facts, given);
    }

    public static Term key(String number) {
        return new Term(NUMBER, number);
    }

    public String number() {
        return number;
    }

    public Document document() {
        return document;
    }

    /** Equal for equal entries, so that a stale one is known without comparing everything. */
    public String print() {
        return document.get(PRINT);
    }

    private void words(PieceFacts facts, Colours colours) {
        Piece piece = facts.piece();
        document.add(new StringField(NUMBER, number, Field.Store.YES));
        for (PieceNumber each : piece.numbers()) {
            term(SQUASHED, FacetValues.squashed(each.value()));
            PlainNumber.shortened(each.value()).forEach(plain -> term(PLAIN, plain));
            text(NUMBER_WORDS, each.value());
            text(ALL, each.value());
        }
        for (String title : List.of(piece.title(), piece.otherTitle())) {
            text(TITLE, title);
            text(ALL, title);
        }
        Stream.of(
                        facts.boards().values().stream().flatMap(board -> Stream.of(board.title(), board.wood())),
                        facts.cloth().cloths().stream().map(cloth -> cloth.title()),
                        facts.lotsUsed().map(PieceFacets::nameOf))
                .flatMap(names -> names)
                .sorted()
                .forEach(name -> text(NAMED, name));
        List<PieceTexts.Passage> passages = PieceTexts.of(facts, colours.all());
        passages.forEach(passage -> text(ALL, passage.text()));
        StatusWords.of(facts.whereabouts().status()).forEach(word -> text(ALL, word));
        sameBytes(PASSAGES, Cards.written(passages));
        facts.boardUses().stream().map(BoardUse::board).distinct().forEach(board -> term(BOARD, board.value()));
        SuggestTerms.of(facts).forEach(term -> term(SUGGEST, term));
    }

    private void facets(Map<Facet, Set<PieceFacets.Value>> facets) {
        facets.forEach((facet, values) -> values.forEach(value -> {
            seen(facet.field(), value.term());
            document.add(new SortedSetDocValuesField(facet.field(), new BytesRef(value.term())));
        }));
    }

    private void numbers(Piece piece, PieceNumbers numbers, Instant recorded) {
        BytesRef packed = numbers.packed();
        print.update(packed.bytes);
        document.add(new BinaryDocValuesField(NUMBERS, packed));
        sortText(SORT_NUMBER, naturally(piece.shown().value()));
        if (!piece.title().isEmpty()) {
            sortText(SORT_TITLE, FacetValues.folded(piece.title()));
        }
        if (piece.finished().known()) {
            sortDay(SORT_DAY, piece.finished());
        } else if (recorded != null) {
            // For the order alone: it is shown and found as of an unknown date.
            document.add(new NumericDocValuesField(
                    SORT_DAY, LocalDate.ofInstant(recorded, ZoneOffset.UTC).toEpochDay()));
        }
        sortNumber(SORT_DIPS, numbers.low(PieceNumbers.DIPS));
        sortNumber(SORT_SIZE, numbers.middle(PieceNumbers.LENGTH) * numbers.middle(PieceNumbers.WIDTH));
        sortNumber(SORT_PRICE, numbers.low(PieceNumbers.PRICE));
    }

    /** Runs of digits padded, so that 9 comes before 10. */
    static String naturally(String number) {
        return java.util.regex.Pattern.compile("\\d+")
                .matcher(FacetValues.folded(number))
                .replaceAll(run -> "0".repeat(Math.max(0, 12 - run.group().length())) + run.group());
    }

    private void sortText(String field, String text) {
        String brief = text.length() > 200 ? text.substring(0, 200) : text;
        document.add(new SortedDocValuesField(field, new BytesRef(brief)));
    }

    private void sortDay(String field, PartialDate when) {
        if (when.known()) {
            long day = (when.from() == null ? when.to() : when.from()).toEpochDay();
            seen(field, Long.toString(day));
            document.add(new NumericDocValuesField(field, day));
        }
    }

    private void sortNumber(String field, double value) {
        if (!Double.isNaN(value)) {
            document.add(new DoubleDocValuesField(field, value));
        }
    }

    /** @param value null for none */
    private void sortNumber(String field, @Nullable Double value) {
        if (value != null) {
            seen(field, Double.toString(value));
            document.add(new DoubleDocValuesField(field, value));
        }
    }

    private void text(String field, String text) {
        if (!text.isBlank()) {
            seen(field, text);
            document.add(new TextField(field, text, Field.Store.NO));
        }
    }

    private void term(String field, String value) {
        if (!value.isEmpty()) {
            seen(field, value);
            document.add(new StringField(field, value, Field.Store.NO));
        }
    }

    private void sameBytes(String field, byte[] bytes) {
        print.update(bytes);
        document.add(new StoredField(field, bytes));
    }

    private void seen(String field, String value) {
        print.update((field + '\n' + value + '\n').getBytes(StandardCharsets.UTF_8));
    }

    private String printed() {
        return Digest.of(print).hex().substring(0, 32);
    }
}
