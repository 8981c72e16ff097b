package tenterbook.exchange;

/** What to do about photographs, and in packing also a ledger, that are not whole. */
public enum DamageAdvice {
    /** Stop, tell all of it, change nothing. */
    REFUSED,
    /** Save what there is and note what is wrong. */
    NOTED
}
