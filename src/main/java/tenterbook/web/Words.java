package tenterbook.web;

import gg.jte.Content;
import tenterbook.words.Conventions;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Texts for the request that this thread answers, in its language. Templates escape them as any other text. */
public final class Words {
    private static final ThreadLocal<Conventions> READER = ThreadLocal.withInitial(Conventions::english);

    private Words() {}

    /** Before each request: how its answer is to be written. */
    static void writeFor(Conventions reader) {
        READER.set(reader);
    }

    public static Conventions conventions() {
        return READER.get();
    }

    /** @param namesAndValues each argument's name, followed by its value */
    public static String w(String key, Object... namesAndValues) {
        return w(Message.of(key, namesAndValues));
    }

    public static String w(Written text) {
        return text.in(READER.get());
    }

    /** A text with links and emphasis: see {@link MarkedText}. */
    public static Content marked(String key, Object... namesAndValues) {
        return new MarkedText(Message.of(key, namesAndValues), READER.get());
    }

    /** The sentence of an exception. */
    public static String sentence(Throwable e) {
        return sentence(e, READER.get());
    }

    /** For work that goes on after the request. */
    public static String sentence(Throwable e, Conventions reader) {
        return e instanceof Explained explained ? explained.explanation().in(reader) : e.getMessage();
    }
}
