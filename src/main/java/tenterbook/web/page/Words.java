package tenterbook.web.page;

import gg.jte.Content;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Conventions;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Texts for the request that this thread answers, in its language. Templates escape them as any other text. */
public final class Words {
    private static final ThreadLocal<Reader> READER = ThreadLocal.withInitial(() -> new Reader(Conventions::english));

    private Words() {}

    /** How one answer is written. Read with its first text, since pictures and styles have none. */
    private static final class Reader {
        private final Supplier<Conventions> source;
        private @Nullable Conventions conventions;

        Reader(Supplier<Conventions> source) {
            this.source = source;
        }

        Conventions conventions() {
            if (conventions == null) {
                conventions = source.get();
            }
            return conventions;
        }
    }

    /** Before each request: how its answer is to be written. */
    public static void writeFor(Supplier<Conventions> reader) {
        READER.set(new Reader(reader));
    }

    public static Conventions conventions() {
        return READER.get().conventions();
    }

    /** @param namesAndValues each argument's name, followed by its value */
    public static String w(String key, Object... namesAndValues) {
        return w(Message.of(key, namesAndValues));
    }

    public static String w(Written text) {
        return text.in(conventions());
    }

    /** A text with links and emphasis: see {@link MarkedText}. */
    public static Content marked(String key, Object... namesAndValues) {
        return new MarkedText(Message.of(key, namesAndValues), conventions());
    }

    /** The sentence of an exception. */
    public static String sentence(Throwable e) {
        return sentence(e, conventions());
    }

    /** For work that goes on after the request. */
    public static String sentence(Throwable e, Conventions reader) {
        return e instanceof Explained explained ? explained.explanation().in(reader) : e.getMessage();
    }
}
