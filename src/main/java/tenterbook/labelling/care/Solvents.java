package tenterbook.labelling.care;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.piece.CareTest;

/**
 * The solvents of a dry-cleaning test, read from the maker's words. One that the words exclude, as in 'hydrocarbon only, not
 * perchloroethylene', was not tested.
 */
final class Solvents {
    private enum Solvent {
        PERCHLOROETHYLENE,
        HYDROCARBON
    }

    private static final Pattern CLAUSE = Pattern.compile("[,;.:\\n()]|\\bbut\\b|\\bonly\\b");
    private static final Pattern NAMED = Pattern.compile("(?<p>perchlor)|hydrocarbon");
    /** Excludes what follows it, as in 'no perchloroethylene'. */
    private static final Pattern BEFORE =
            Pattern.compile("\\b(not|no|never|nor|neither|without|except|avoid|instead of|rather than)\\b|n['’]t\\b");
    /** Excludes also what stands before it, as in 'hydrocarbon was not tried', but not in 'hydrocarbon without change'. */
    private static final Pattern AFTER =
            Pattern.compile("\\b(not|never|un(tested|tried|suitable)|excluded|avoided|forbidden|failed)\\b|n['’]t\\b");

    private final Set<Solvent> used = EnumSet.noneOf(Solvent.class);
    private final Set<Solvent> excluded = EnumSet.noneOf(Solvent.class);

    private Solvents() {}

    /**
     * The symbol of the solvents a passed test was made with. ISO 3758: P permits perchloroethylene and all solvents of F, so
     * it is not drawn where either is excluded. Empty where the words name no solvent plainly.
     */
    static Optional<CareSymbol> symbol(CareTest test) {
        Solvents found = new Solvents();
        for (String clause : CLAUSE.split(words(test))) {
            found.read(clause);
        }
        found.used.removeAll(found.excluded);
        if (found.used.contains(Solvent.PERCHLOROETHYLENE) && found.excluded.isEmpty()) {
            return Optional.of(CareSymbol.DRY_CLEAN_P);
        }
        return found.used.contains(Solvent.HYDROCARBON) ? Optional.of(CareSymbol.DRY_CLEAN_F) : Optional.empty();
    }

    /** Whether a solvent is named at all, be it used or excluded. */
    static boolean named(CareTest test) {
        return NAMED.matcher(words(test)).find();
    }

    private static String words(CareTest test) {
        return (test.method() + "\n" + test.result()).toLowerCase(Locale.ROOT);
    }

    private void read(String clause) {
        Matcher before = BEFORE.matcher(clause);
        int from = before.find() ? before.start() : clause.length();
        boolean all = AFTER.matcher(clause).find()
                && !NAMED.matcher(clause.substring(from)).find();
        Matcher named = NAMED.matcher(clause);
        while (named.find()) {
            Solvent solvent = named.group("p") == null ? Solvent.HYDROCARBON : Solvent.PERCHLOROETHYLENE;
            (all || named.start() > from ? excluded : used).add(solvent);
        }
    }
}
