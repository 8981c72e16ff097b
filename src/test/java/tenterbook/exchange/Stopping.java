package tenterbook.exchange;

import tenterbook.ledger.file.Progress;

/** Asks to stop from the nth sign of progress on. */
final class Stopping implements Progress {
    private final int last;
    private int seen;

    Stopping(int last) {
        this.last = last;
    }

    @Override
    public void at(long done, long total, String what) {
        seen++;
    }

    @Override
    public boolean cancelled() {
        return seen >= last;
    }
}
