package tenterbook.exchange;

/** What to do about photographs, and in packing also a ledger, that are not whole. */
public enum DamageAdvice {
    /** Stop, report all of it, change nothing. */
    REFUSED,
    /** Save what there is and note the damage. */
    NOTED
}
