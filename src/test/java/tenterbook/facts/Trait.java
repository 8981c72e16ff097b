package tenterbook.facts;

import java.util.EnumSet;
import java.util.Set;

/** One thing that may be recorded of a piece. */
enum Trait {
    FAULT,
    NOTED_EXAMINATION,
    REPORT,
    /** An earlier report than {@link #REPORT}. */
    EARLIER_REPORT(REPORT),
    SEEN(REPORT),
    GONE(REPORT),
    SUMMARY(REPORT),
    JUDGED(REPORT),
    EXAMINER(REPORT),
    WASHED,
    DAMAGED,
    SOLD,
    LENT,
    PRICE_OF_LOAN(LENT),
    /** In an agreement, of which no event is noted. */
    VALUE_AGREED,
    STATUS_SOLD,
    HOLDER,
    ASKED,
    PHOTOGRAPHED,
    CLAMPING,
    STEPS(CLAMPING),
    DIPS_TYPED(CLAMPING, STEPS),
    DIPS_TIMED(CLAMPING, STEPS),
    DYE(CLAMPING, STEPS),
    CLOTH(CLAMPING),
    FIBRES(CLAMPING, CLOTH),
    BOARD(CLAMPING),
    KIN(CLAMPING),
    DYED_AGAIN(CLAMPING),
    PHOTO_OF_STATE_ONE,
    PHOTO_OF_TODAY,
    NAMED_COLOUR(PHOTO_OF_TODAY),
    WASH_TEST;

    private final Set<Trait> needs;

    Trait(Trait... needs) {
        this.needs = Set.of(needs);
    }

    /** With what each of them cannot be without. */
    static Set<Trait> whole(Set<Trait> traits) {
        Set<Trait> whole = EnumSet.noneOf(Trait.class);
        traits.forEach(trait -> {
            whole.add(trait);
            whole.addAll(trait.needs);
        });
        return whole;
    }
}
