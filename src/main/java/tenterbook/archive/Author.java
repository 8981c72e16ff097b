package tenterbook.archive;

import org.jspecify.annotations.Nullable;

/** In whose name the work of a thread is saved. Without one it is the maker's: see {@link Archive#author}. */
public final class Author {
    private static final ThreadLocal<@Nullable String> NAME = new ThreadLocal<>();

    private Author() {}

    /** From now on, on this thread. */
    public static void is(String name) {
        NAME.set(name);
    }

    public static void isTheMaker() {
        NAME.remove();
    }

    /** The same author for work that goes on elsewhere. */
    public static Runnable carry(Runnable work) {
        String name = NAME.get();
        if (name == null) {
            return work;
        }
        return () -> {
            is(name);
            try {
                work.run();
            } finally {
                isTheMaker();
            }
        };
    }

    static @Nullable String named() {
        return NAME.get();
    }
}
