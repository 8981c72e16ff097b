package tenterbook.words;

/**
 * How the paper that this thread composes is written. Without a paper it is English.
 *
 * <p>A thread's value and not a parameter: the sentences of a document are made in ten rooms, by some hundred methods that labels and
 * the index call too, and none of them decides anything by the language. Set where a document is composed or laid out, nowhere else.
 */
public final class PaperLanguage {
    private static final ThreadLocal<Conventions> PAPER = new ThreadLocal<>();

    private PaperLanguage() {}

    /** Work on a paper, which may fail in its own way. */
    @FunctionalInterface
    public interface Work<T, E extends Exception> {
        T done() throws E;
    }

    /** What {@code work} gives, its {@link Written#onPaper} texts in these conventions; those of before hold again afterwards. */
    public static <T, E extends Exception> T write(Conventions conventions, Work<T, E> work) throws E {
        Conventions before = PAPER.get();
        PAPER.set(conventions);
        try {
            return work.done();
        } finally {
            if (before == null) {
                PAPER.remove();
            } else {
                PAPER.set(before);
            }
        }
    }

    /** The language that a paper's readers hear and its words are divided in. */
    public static Language language() {
        return Language.of(conventions().language().getLanguage()).orElse(Language.ENGLISH);
    }

    /** The word of a choice; in English that of the record, as English papers always had it. */
    public static String word(Worded choice) {
        return language() == Language.ENGLISH ? choice.toString() : choice.onPaper();
    }

    /** Whether these are of the paper that this thread composes, and not of a page or of data made meanwhile. */
    public static boolean isOf(Conventions conventions) {
        return PAPER.get() == conventions;
    }

    static Conventions conventions() {
        Conventions paper = PAPER.get();
        return paper == null ? Conventions.english() : paper;
    }
}
