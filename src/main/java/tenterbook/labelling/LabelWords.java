package tenterbook.labelling;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.facts.Denial;
import tenterbook.facts.Origin;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelText.Line;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.care.CareCase;
import tenterbook.labelling.care.CareSymbols;
import tenterbook.labelling.care.CareWords;
import tenterbook.labelling.rule.Article;
import tenterbook.labelling.rule.Component;
import tenterbook.labelling.rule.FibreLine;
import tenterbook.labelling.rule.FibreMentions;
import tenterbook.labelling.rule.FibreStatement;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.labelling.rule.PartialTag;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.RuleTable;
import tenterbook.material.Role;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.piece.condition.Examination;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Composes the lines of each kind of label. */
public final class LabelWords {
    /** Capacity in bytes of a code of 37 modules at level M, less its charset mark (ISO/IEC 18004, version 5-M: 84). */
    private static final int MOST_CODE_BYTES = 80;

    private final PieceFacts facts;
    private final PrintSettings request;
    private final List<PieceColour> colours;
    private final RuleTable rules;
    /** Longer words for the making have no room on a tag of the usual size beside a full statement of fibres. */
    private static final int SHORT_ON_TAG = 130;

    private final Piece piece;
    private final Studio studio;
    private final Origin origin;
    private final List<Component> components;
    private final List<Line> lines = new ArrayList<>();
    private final List<LabelRefusal> refusals = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    /** @param colours of the band, where the label has one */
    public LabelWords(PieceFacts facts, PrintSettings request, List<PieceColour> colours) {
        this.facts = facts;
        this.colours = colours;
        this.request = request;
        this.rules = request.market().rules();
        this.piece = facts.piece();
        this.studio = facts.studio();
        this.origin = facts.origin();
        this.components = facts.cloth().cloths().stream().map(Component::of).toList();
    }

    public LabelText text() {
        switch (request.kind()) {
            case HANG_TAG -> hangTag();
            case CARE_LABEL -> careLabel();
            case EXHIBITION_LABEL -> exhibitionLabel();
            case CONDITION_TAG, CONDITION_LABEL -> conditionLabel();
            case SHELF_TAG, TUBE_TAG -> storeTag();
        }
        if (!refusals.isEmpty()) {
            throw new LabelBlocked(List.of(new LabelBlocked.Piece(piece.number(), refusals)));
        }
        Answers.Sorted asked = Answers.sorted(questions.stream().distinct().toList(), facts);
        boolean coded = request.kind().hung() || stored();
        return new LabelText(
                piece.number(),
                request,
                request.kind().statesFibres() ? List.of(rules.version()) : List.of(),
                request.kind().template(),
                lines,
                coded ? code() : "",
                request.kind().hung() ? colours : List.of(),
                asked.open(),
                asked.answers());
    }

    private void hangTag() {
        add(Part.MAKER, origin.studio());
        add(Part.PLACE, origin.place());
        add(Part.TITLE, piece.title().isEmpty() ? piece.shown().value() : piece.title());
        add(Part.OTHER_TITLE, piece.otherTitle());
        add(Part.NUMBER, numberAndEdition());
        if (!request.content().fullContent()) {
            clothNames().forEach(name -> add(Part.MATERIAL, Written.capital(name)));
        }
        SizeWords.of(piece, request.market()).ifPresent(size -> add(Part.SIZE, size));
        add(Part.MADE, made(SHORT_ON_TAG));
        if (request.content().fullContent()) {
            statement();
        } else {
            String words = lines.stream().map(Line::text).collect(Collectors.joining(" "));
            PartialTag.sentence(request.market(), withParts(), words, refusals).ifPresent(this::add);
            questions.addAll(rules.asked("words", words + " " + studio.careLine()));
        }
        care();
        add(
                Part.CARE,
                SameAdvice.without(
                        studio.careLine(),
                        lines.stream()
                                .filter(line -> line.part() == Part.CARE)
                                .map(Line::text)
                                .toList()));
        colours.forEach(colour -> add(Part.COLOUR, colour.name()));
        if (request.content().priceShown() && piece.price() != null) {
            add(Part.PRICE, piece.price().toString());
        }
    }

    private void careLabel() {
        add(Part.MAKER, origin.studio());
        statement();
        care();
        add(Part.NUMBER, piece.shown().value());
    }

    private void exhibitionLabel() {
        add(Part.MAKER, Denial.orElse(origin.named(), Denial.NO_MAKER));
        add(
                Part.TITLE,
                piece.title().isEmpty() ? Message.of("label.title-not-recorded").inEnglish() : piece.title());
        add(Part.OTHER_TITLE, piece.otherTitle());
        add(Part.DATE, date());
        add(
                Part.MATERIAL,
                Written.capital(Denial.NO_CLOTH.unless(
                        facts,
                        () -> clothNames().isEmpty()
                                ? Message.of("label.cloth-not-named").inEnglish()
                                : Wording.listed(clothNames()))));
        add(
                Part.SIZE,
                SizeWords.of(piece, request.market())
                        .orElseGet(() -> Message.of("label.size-not-recorded").inEnglish()));
        add(Part.MADE, made(Integer.MAX_VALUE));
        add(Part.NUMBER, numberAndEdition());
        add(Part.PLACE, origin.beside());
    }

    /** What it is made of, how, in what condition, and how it is to be treated, for sale or exhibition. */
    private void conditionLabel() {
        add(Part.MAKER, Denial.orElse(origin.named(), Denial.NO_MAKER));
        add(Part.PLACE, origin.beside());
        add(Part.TITLE, piece.title().isEmpty() ? piece.shown().value() : piece.title());
        add(Part.OTHER_TITLE, piece.otherTitle());
        add(Part.NUMBER, numberAndEdition());
        SizeWords.of(piece, request.market()).ifPresent(size -> add(Part.SIZE, size));
        add(Part.MATERIAL, Written.capital(Denial.NO_CLOTH.unless(facts, () -> Wording.listed(clothNames()))));
        statement();
        add(Part.DYES, Denial.NO_DYE_LOTS.unless(facts, () -> lots(Role.DYE, "label.dyed-with", "dyes")));
        add(Part.DYES, lots(Role.MORDANT, "label.mordanted-with", "mordants"));
        add(Part.MADE, made(Integer.MAX_VALUE));
        add(Part.CONDITION, Written.stop(Written.capital(facts.condition().inWords())));
        String light = facts.condition().last().map(Examination::light).orElse("");
        String measured = ExaminationLight.measured(light);
        if (!measured.isEmpty()) {
            add(
                    Part.CONDITION,
                    Message.of("label.light-when-examined", "measured", measured)
                            .inEnglish());
        }
        add(
                Part.ADVICE,
                Message.of("label.light-with-reason", "caution", LightAdvice.caution(facts))
                        .inEnglish());
        add(Part.ADVICE, ExaminationLight.advice(light));
        facts.condition().last().ifPresent(last -> add(Part.ADVICE, last.handling()));
        if (!piece.particulars().residues().isEmpty()) {
            add(
                    Part.ADVICE,
                    Message.of("label.residues", "residues", piece.particulars().residues())
                            .inEnglish());
        }
        add(Part.WORDS, request.content().words());
        questions.add(new Question(Message.of("label.also-sewn"), rules.rule("carePermanent")));
    }

    private String lots(Role role, String key, String name) {
        List<String> names = facts.lotsUsed(role)
                .map(lot -> lot.name().isEmpty() ? lot.id().value() : lot.name())
                .distinct()
                .toList();
        return names.isEmpty()
                ? ""
                : Message.of(key, name, Wording.listed(names)).inEnglish();
    }

    private String made(int most) {
        return HowMade.forReaders(facts, request.content().boardsNamed(), most);
    }

    private boolean stored() {
        return request.kind() == LabelKind.SHELF_TAG || request.kind() == LabelKind.TUBE_TAG;
    }

    /** For the maker's own shelves, not for a buyer. */
    private void storeTag() {
        add(Part.NUMBER, piece.shown().value());
        add(Part.TITLE, piece.title().isEmpty() ? Message.of("label.untitled").inEnglish() : piece.title());
        add(Part.OTHER_TITLE, piece.otherTitle());
        List<String> cloths = clothNames();
        add(Part.MATERIAL, cloths.isEmpty() ? "" : Written.capital(Wording.listed(cloths)));
        add(Part.SIZE, SizeWords.of(piece, request.market()).orElse(""));
        add(Part.STORED, piece.place());
    }

    private void statement() {
        String words = Stream.concat(
                        Stream.of(piece.title(), piece.otherTitle(), studio.careLine()),
                        lines.stream().map(Line::text))
                .collect(Collectors.joining(" "));
        FibreStatement statement = FibreStatement.of(
                request.market(),
                new Article(
                        piece.category(),
                        components,
                        origin.dyedIn(),
                        piece.trims(),
                        studio,
                        words,
                        piece.label()
                                .forSale(
                                        request.content().soldIn(),
                                        studio.selling().soldIn())));
        refusals.addAll(statement.refusals());
        questions.addAll(statement.questions());
        questions.addAll(FibreEvidence.questions(
                facts.cloth().cloths(), piece.label().components(), rules.rule("fibreEvidence")));
        questions.addAll(
                FibreMentions.questions(request.market(), withParts(), piece.title() + " " + piece.otherTitle()));
        statement.lines().stream()
                .filter(line -> line.kind() != FibreLine.Kind.MAKER)
                .filter(line -> line.kind() != FibreLine.Kind.PARTICULARS
                        || request.kind().hung()
                        || rules.makerOnLabel())
                .forEach(this::add);
    }

    /** The cloths, and the parts besides of which fibres are recorded. */
    private List<Component> withParts() {
        return Stream.concat(
                        components.stream(),
                        piece.label().components().stream()
                                .filter(part -> !part.fibres().isEmpty())
                                .map(Component::of))
                .toList();
    }

    private void care() {
        CareCase about = CareFacts.of(facts);
        CareWords care = CareWords.of(about, request.market());
        if (request.content().careSymbols() && request.kind() == LabelKind.CARE_LABEL) {
            CareSymbols symbols = CareSymbols.of(about, request.market());
            symbols.marks()
                    .forEach(mark ->
                            lines.add(new Line(Part.CARE_SYMBOL, mark.symbol().words(), mark.evidence())));
            questions.addAll(symbols.questions());
        }
        care.lines().forEach(line -> lines.add(new Line(Part.CARE, line.text(), line.evidence())));
        questions.addAll(care.questions());
        if (request.kind().hung()) {
            questions.add(new Question(Message.of("label.also-sewn"), rules.rule("carePermanent")));
            if (care.missing() != null) {
                questions.add(new Question(
                        Message.of("label.no-care", "why", care.missing().found()),
                        care.missing().rule()));
            }
        } else if (care.missing() != null) {
            refusals.add(care.missing());
        }
    }

    private List<String> clothNames() {
        return facts.cloth().names();
    }

    private String date() {
        if (piece.finished().year() != null) {
            String year = piece.finished().year().toString();
            return piece.finished().about()
                    ? Message.of("label.about-year", "year", year).inEnglish()
                    : year;
        }
        return piece.finished().known()
                ? piece.finished().toString()
                : Message.of("label.date-not-recorded").inEnglish();
    }

    private String numberAndEdition() {
        return piece.edition().isEmpty()
                ? piece.shown().value()
                : Message.of("label.number-and-edition", "number", piece.shown(), "edition", piece.editionOnPapers())
                        .inEnglish();
    }

    /** Plain text, readable without a network: number, title, studio; without the title where that is too long. */
    private String code() {
        String whole = code(piece.shown().value(), piece.title(), origin.studio());
        return whole.getBytes(StandardCharsets.UTF_8).length <= MOST_CODE_BYTES
                ? whole
                : code(piece.shown().value(), origin.studio());
    }

    private static String code(String... parts) {
        return Stream.of(parts).filter(s -> !s.isEmpty()).collect(Collectors.joining("\n"));
    }

    private void add(FibreLine line) {
        Part part = switch (line.kind()) {
            case CONTENT, ANIMAL_PARTS -> Part.CONTENT;
            case ORIGIN -> Part.ORIGIN;
            case MAKER -> Part.MAKER;
            case PARTICULARS -> Part.PARTICULARS;
        };
        lines.add(new Line(part, line.text(), line.basis()));
    }

    private void add(Part part, String text) {
        if (!text.isBlank()) {
            lines.add(new Line(part, text, ""));
        }
    }
}
