package tenterbook.facts;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import tenterbook.material.Cloth;
import tenterbook.material.Role;
import tenterbook.piece.EventKind;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A sentence that denies something, with the facts that would contradict it. All such sentences are here, and a page or paper
 * gets one only where nothing contradicts it. An empty field shown as 'not recorded' beside its label is no such sentence.
 *
 * @param <T> what the sentence is about
 */
public final class Denial<T> {
    private static final List<Denial<?>> ALL = new ArrayList<>();

    // ---- how it was made

    public static final Denial<PieceFacts> NOT_KNOWN_HOW_MADE =
            new Denial<>(PieceFacts.class, "denial.how-made").but("a clamping", PieceFacts::dyed);
    public static final Denial<PieceFacts> NOTHING_TO_REPEAT =
            new Denial<>(PieceFacts.class, "denial.nothing-to-repeat").but("a clamping", PieceFacts::dyed);
    public static final Denial<PieceFacts> NOT_TOLD_YET = new Denial<>(PieceFacts.class, "denial.not-told-yet")
            .but("a clamping", PieceFacts::dyed)
            .but(
                    "a clamping that is named and cannot be found",
                    facts -> !facts.piece().made().isEmpty());
    public static final Denial<Clamping> NO_DYES = new Denial<>(Clamping.class, "denial.dyes")
            .but("a step", clamping -> !clamping.steps().isEmpty())
            .but("a lot", clamping -> clamping.lots().anyMatch(Objects::nonNull));
    public static final Denial<Clamping> NO_STEP = new Denial<>(Clamping.class, "denial.step")
            .but("a step", clamping -> !clamping.steps().isEmpty());
    public static final Denial<DipTally> NO_NUMBER_OF_DIPS =
            new Denial<>(DipTally.class, "denial.number-of-dips").but("a number of dips", DipTally::known);
    public static final Denial<String> NO_DIPS = given("denial.dips");
    public static final Denial<PieceFacts> NO_DYE_LOTS = new Denial<>(PieceFacts.class, "denial.dye-lots")
            .but("a lot of dye", facts -> facts.lotsUsed(Role.DYE).findAny().isPresent());

    // ---- cloth and colours

    public static final Denial<PieceFacts> NO_CLOTH = new Denial<>(PieceFacts.class, "denial.cloth")
            .but("a cloth", facts -> !facts.cloth().cloths().isEmpty());
    public static final Denial<Cut> NO_CLOTH_OF_CUT =
            new Denial<>(Cut.class, "denial.cloth").but("a cloth", cut -> cut.cloth() != null);
    public static final Denial<String> NO_CLOTH_ON_CARD = given("denial.cloth");
    public static final Denial<Cloth> NO_FIBRES = new Denial<>(Cloth.class, "denial.fibres")
            .but("a fibre", cloth -> !cloth.content().isEmpty());
    public static final Denial<Cloth> NO_EVIDENCE_OF_FIBRES = new Denial<>(Cloth.class, "denial.evidence")
            .but("evidence", cloth -> !cloth.contentEvidence().isEmpty());
    public static final Denial<PieceFacts> NO_COLOURS = new Denial<>(PieceFacts.class, "denial.colours")
            .but("a named colour", facts -> !facts.namedColours().named().isEmpty());
    public static final Denial<PieceFacts> NO_PHOTOGRAPH = new Denial<>(PieceFacts.class, "denial.photograph")
            .but("a photograph", facts -> !facts.piece().photos().isEmpty());
    public static final Denial<PieceFacts> NO_PHOTOGRAPH_OF_TODAY = new Denial<>(
                    PieceFacts.class, "denial.photograph-of-today")
            .but("a photograph of its present state", facts -> !facts.pictures().isEmpty());

    public static final Denial<PhotographScale> NO_SCALE = new Denial<>(PhotographScale.class, "denial.scale")
            .but("an outline of the cloth that agrees with the recorded size", PhotographScale::known);
    public static final Denial<PieceFacts> NO_PICTURE_TO_KNOW_IT_BY = new Denial<>(
                    PieceFacts.class, "denial.picture-to-know-it-by")
            .but("a photograph of its present state", facts -> !facts.pictures().isEmpty());

    // ---- condition

    public static final Denial<Condition> NO_FAULT_AND_NO_EXAMINATION = new Denial<>(
                    Condition.class, "denial.fault-and-examination")
            .but("a fault", condition -> !condition.faults().isEmpty())
            .but("a report of an examination", condition -> condition.last().isPresent())
            .but(
                    "an examination that was noted",
                    condition -> !condition.notes().isEmpty())
            .but("damage", condition -> !condition.damage().isEmpty());
    public static final Denial<Condition> NO_FAULT = new Denial<>(Condition.class, "denial.fault")
            .but("a fault", condition -> !condition.faults().isEmpty())
            .but(
                    "something that an examination saw",
                    condition -> !condition.present().isEmpty())
            .but("damage", condition -> !condition.damage().isEmpty());
    public static final Denial<PieceFacts> NO_DISTINGUISHING_FEATURE = new Denial<>(
                    PieceFacts.class, "denial.distinguishing-feature")
            .but(
                    "a distinguishing feature, a fault or something that an examination saw",
                    facts -> !facts.features().isEmpty())
            .but(
                    "an inscription or mark",
                    facts -> !facts.piece().particulars().inscriptions().isEmpty());
    public static final Denial<Condition> NEVER_EXAMINED = new Denial<>(Condition.class, "denial.never-examined")
            .but("a report of an examination", condition -> condition.last().isPresent())
            .but(
                    "an examination that was noted",
                    condition -> !condition.notes().isEmpty());
    public static final Denial<Condition> NEVER = new Denial<>(Condition.class, "denial.never")
            .but("a report of an examination", condition -> condition.last().isPresent())
            .but(
                    "an examination that was noted",
                    condition -> !condition.notes().isEmpty());
    public static final Denial<Condition> NO_REPORT = new Denial<>(Condition.class, "denial.report")
            .but("a report of an examination", condition -> condition.last().isPresent());
    public static final Denial<Examination> NOTHING_NOTED = new Denial<>(Examination.class, "denial.noted")
            .but("an observation", examination -> !examination.observations().isEmpty())
            .but("a summary", examination -> !examination.summary().isEmpty());
    public static final Denial<Examination> NOTHING_WAS_NOTED = new Denial<>(
                    Examination.class, "denial.nothing-was-noted")
            .but("an observation", examination -> !examination.observations().isEmpty())
            .but("a summary", examination -> !examination.summary().isEmpty());
    public static final Denial<Examination> NOTHING_LISTED = new Denial<>(Examination.class, "denial.listed")
            .but("an observation", examination -> !examination.observations().isEmpty());
    public static final Denial<Examination> NOT_JUDGED = new Denial<>(Examination.class, "denial.judged")
            .but("a state of the whole", examination -> examination.overall() != null);
    public static final Denial<List<Examination>> NO_EARLIER_EXAMINATION = new Denial<>(
                    Denial.<List<Examination>>type(List.class), "denial.earlier-examination")
            .but("an earlier examination", earlier -> !earlier.isEmpty());
    public static final Denial<Examination> NO_EXAMINER = new Denial<>(Examination.class, "denial.examiner")
            .but("an examiner", examination -> !examination.examiner().isEmpty())
            .but("the examiner's house", examination -> examination.party() != null);

    // ---- where it is and has been

    public static final Denial<PieceFacts> NOTHING_SINCE_MADE = new Denial<>(PieceFacts.class, "denial.since-made")
            .but(
                    "an event",
                    facts -> facts.piece().events().stream().anyMatch(event -> event.kind() != EventKind.PHOTOGRAPHED))
            .but("a report of an examination", facts -> !facts.examinations().isEmpty())
            .but("another dyeing", facts -> facts.piece().state() > 1)
            .but("a holder", facts -> facts.piece().holder() != null)
            .but("a status that says it left", facts -> facts.whereabouts().away());
    public static final Denial<PieceFacts> NOTHING_AGREED = new Denial<>(PieceFacts.class, "denial.agreed")
            .but(
                    "a price that was agreed for a loan or a consignment",
                    facts -> facts.piece().events().stream()
                            .anyMatch(event -> event.price() != null
                                    && (event.kind() == EventKind.LENT || event.kind() == EventKind.CONSIGNED)))
            .but("a value in an agreement with anybody", PieceFacts::valueAgreed);
    public static final Denial<String> NO_KIN = given("denial.kin");
    public static final Denial<String> NO_PLACE_OF_MAKING = given("denial.place-of-making");
    public static final Denial<String> NO_MAKER = given("denial.maker");

    /** A fact that contradicts the sentence. */
    private record Contradiction<T>(String fact, Predicate<T> there) {}

    private final Class<T> about;
    private final Message sentence;
    private final List<Contradiction<T>> contradictions = new ArrayList<>();

    private Denial(Class<T> about, String key) {
        this.about = about;
        this.sentence = Message.of(key);
        ALL.add(this);
    }

    @SuppressWarnings("unchecked")
    private static <L> Class<L> type(Class<?> raw) {
        return (Class<L>) raw;
    }

    private Denial<T> but(String fact, Predicate<T> there) {
        contradictions.add(new Contradiction<>(fact, there));
        return this;
    }

    /** A sentence shown instead of an empty text, contradicted by any text. */
    private static Denial<String> given(String key) {
        return new Denial<>(String.class, key).but("what it stands in place of", text -> !text.isBlank());
    }

    public static List<Denial<?>> all() {
        return Collections.unmodifiableList(ALL);
    }

    public Class<T> about() {
        return about;
    }

    /** The sentence; empty where a fact contradicts it. */
    public Optional<Message> message(T subject) {
        return contradictedBy(subject).isEmpty() ? Optional.of(sentence) : Optional.empty();
    }

    /** As {@link #message}, in the language of the paper that is composed. */
    public Optional<String> of(T subject) {
        return message(subject).map(Message::onPaper);
    }

    /** The sentence, or {@code otherwise} where a fact contradicts it. */
    public String unless(T subject, Supplier<String> otherwise) {
        return of(subject).orElseGet(otherwise);
    }

    /** The facts that contradict it, in words. */
    public List<String> contradictedBy(T subject) {
        return contradictions.stream()
                .filter(each -> each.there.test(subject))
                .map(Contradiction::fact)
                .toList();
    }

    /** What contradicts it, in words. */
    List<String> contradictions() {
        return contradictions.stream().map(Contradiction::fact).toList();
    }

    /** Whether a text denies this, in upper or lower case. */
    public boolean isIn(String text) {
        return text.toLowerCase(Locale.ROOT).contains(sentence.inEnglish().toLowerCase(Locale.ROOT));
    }

    /** Whether it is long enough not to be part of other sentences. */
    boolean longEnoughToTell() {
        return sentence.inEnglish().indexOf(' ') > 0;
    }

    /** For tests and logs only; pages and papers use {@link #of}. */
    @Override
    public String toString() {
        return "denial “" + sentence + "”";
    }

    /** {@code text}, or the sentence where that is empty. */
    public static Written writtenOrElse(String text, Denial<String> denial) {
        return conventions ->
                denial.message(text).map(sentence -> sentence.in(conventions)).orElse(text);
    }

    /** In the language of the paper that is composed. */
    public static String orElse(String text, Denial<String> denial) {
        return denial.unless(text, () -> text);
    }
}
