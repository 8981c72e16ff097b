package tenterbook.web.job;

import static tenterbook.web.page.Words.w;

import java.util.List;
import tenterbook.ledger.file.Progress;

/** One piece of long work. Safe for many threads. */
public final class Job implements Progress {
    /** How far a job is. */
    public enum State {
        WAITING,
        RUNNING,
        DONE,
        FOUND_FAULTS,
        STOPPED,
        FAILED
    }

    /**
     * What a job ends with.
     *
     * @param summary one sentence
     * @param notes further sentences, none of them about a fault
     * @param findings what is wrong, empty where nothing is
     * @param next address of the page to go on with, or empty
     */
    public record Outcome(String summary, List<String> notes, List<String> findings, String next) {
        public Outcome(String summary, List<String> findings, String next) {
            this(summary, List.of(), findings, next);
        }
    }

    private final String id;
    private final String title;
    private volatile State state = State.WAITING;
    private volatile long done;
    private volatile long total;
    private volatile String what = w("work.waiting");
    private volatile boolean stopAsked;
    private volatile Outcome outcome = new Outcome("", List.of(), "");

    Job(String id, String title) {
        this.id = id;
        this.title = title;
    }

    @Override
    public void at(long done, long total, String what) {
        this.done = done;
        this.total = total;
        this.what = what;
    }

    @Override
    public boolean cancelled() {
        return stopAsked;
    }

    public void stop() {
        stopAsked = true;
    }

    void running() {
        state = State.RUNNING;
    }

    void end(State state, Outcome outcome) {
        this.outcome = outcome;
        this.state = state;
    }

    public String id() {
        return id;
    }

    public String title() {
        return title;
    }

    public State state() {
        return state;
    }

    public boolean over() {
        return state != State.WAITING && state != State.RUNNING;
    }

    public long done() {
        return done;
    }

    public long total() {
        return total;
    }

    public String what() {
        return what;
    }

    public boolean stopAsked() {
        return stopAsked;
    }

    public Outcome outcome() {
        return outcome;
    }
}
