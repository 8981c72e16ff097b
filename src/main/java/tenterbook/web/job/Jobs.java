package tenterbook.web.job;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Author;
import tenterbook.ledger.file.Progress;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;

/** The long work of a running program, one after another on a thread of its own. */
public final class Jobs implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

    /** Work that reports its progress and ends with an outcome. */
    @FunctionalInterface
    public interface Work {
        Job.Outcome run(Progress progress) throws Exception;
    }

    private final Map<String, Job> jobs = new ConcurrentHashMap<>();
    private final AtomicInteger numbers = new AtomicInteger();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "long work");
        made.setDaemon(true);
        return made;
    });

    public Job start(String title, Work work) {
        return start(title, work, () -> {});
    }

    /** @param afterwards runs when the work is over, also where that was stopped before its turn */
    public Job start(String title, Work work, Runnable afterwards) {
        Job job = new Job(Integer.toString(numbers.incrementAndGet()), title);
        jobs.put(job.id(), job);
        Conventions reader = Words.conventions();
        thread.execute(Author.carry(() -> run(job, work, afterwards, reader)));
        return job;
    }

    private static void run(Job job, Work work, Runnable afterwards, Conventions reader) {
        job.running();
        Job.State state;
        Job.Outcome outcome;
        try {
            job.orStop();
            outcome = work.run(job);
            state = outcome.findings().isEmpty() ? Job.State.DONE : Job.State.FOUND_FAULTS;
        } catch (Progress.Cancelled e) {
            state = Job.State.STOPPED;
            outcome = new Job.Outcome(Words.sentence(e, reader), List.of(), "");
        } catch (Exception | Error e) {
            // An Error too ends the work, or its page would wait without end.
            LOG.error("{} failed", job.title(), e);
            state = Job.State.FAILED;
            outcome = new Job.Outcome(String.valueOf(Words.sentence(e, reader)), List.of(), "");
        }
        try {
            afterwards.run();
        } catch (RuntimeException e) {
            LOG.warn("{} was not tidied up after", job.title(), e);
        }
        job.end(state, outcome);
    }

    public Optional<Job> find(String id) {
        return Optional.ofNullable(jobs.get(id));
    }

    @Override
    public void close() {
        jobs.values().forEach(Job::stop);
        thread.shutdown();
        try {
            // Work checks often whether it should stop; the archive stays open until it has.
            if (!thread.awaitTermination(20, TimeUnit.SECONDS)) {
                LOG.warn("Long work did not stop in time");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
