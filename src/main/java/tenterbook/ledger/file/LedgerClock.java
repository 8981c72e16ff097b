package tenterbook.ledger.file;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import tenterbook.measure.DateWords;
import tenterbook.words.Message;

/**
 * The computer's clock, as far as it can be believed. One that is a day or more behind the newest revision, as after a flat
 * battery, is in doubt until a person says that it is right, or which day it is; until then nothing is saved. What was said holds
 * while the program runs. Thread-safe.
 */
public final class LedgerClock extends Clock {
    /** A clock set for another time zone differs by less. */
    private static final Duration FAR = Duration.ofDays(1);

    private final Clock computer;
    private final Database database;
    private volatile boolean confirmed;
    private volatile Duration correction = Duration.ZERO;

    public LedgerClock(Clock computer, Database database) {
        this.computer = computer;
        this.database = database;
    }

    /**
     * What is in doubt.
     *
     * @param shown day that the clock shows
     * @param newest day on which the newest revision was written
     */
    public record Doubt(LocalDate shown, LocalDate newest) {
        public Message sentence() {
            return Message.of("ledger.clock-behind", "shown", DateWords.day(shown), "newest", DateWords.day(newest));
        }

        /** The same where something was to be saved or numbered. */
        public Message refusal() {
            return Message.of("ledger.clock-doubted", "doubt", sentence());
        }
    }

    /** Nothing was saved and no number was given, since the clock is in doubt. */
    public static final class Doubted extends ArchiveProblem {
        private static final long serialVersionUID = 1L;

        Doubted(Doubt doubt) {
            super(doubt.refusal());
        }
    }

    /** Empty where the clock is believed. */
    public Optional<Doubt> doubt() {
        Instant now = instant();
        return confirmed
                ? Optional.empty()
                : newest().filter(written -> now.isBefore(written.minus(FAR)))
                        .map(written -> new Doubt(day(now), day(written)));
    }

    /** @throws Doubted where the clock is in doubt */
    public void mustBeBelieved() {
        doubt().ifPresent(doubt -> {
            throw new Doubted(doubt);
        });
    }

    /** The computer's clock is right, and the newest revision was written with a wrong one. */
    public void confirm() {
        confirmed = true;
    }

    /** Goes on from this day, at the time of day that the computer's clock shows. */
    public void correct(LocalDate today) {
        Instant shown = computer.instant();
        Instant meant = today.atTime(shown.atZone(getZone()).toLocalTime())
                .atZone(getZone())
                .toInstant();
        correction = Duration.between(shown, meant);
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, getZone());
    }

    private Optional<Instant> newest() {
        try {
            return database.read(handle -> handle.createQuery(
                                    "SELECT written_at FROM revisions ORDER BY sequence DESC LIMIT 1")
                            .mapTo(String.class)
                            .findOne())
                    .map(Instant::parse);
        } catch (DateTimeException e) {
            // The check of the ledger says that it cannot be read.
            return Optional.empty();
        }
    }

    @Override
    public Instant instant() {
        return computer.instant().plus(correction);
    }

    @Override
    public ZoneId getZone() {
        return computer.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        LedgerClock whole = this;
        return new Clock() {
            @Override
            public ZoneId getZone() {
                return zone;
            }

            @Override
            public Clock withZone(ZoneId other) {
                return whole.withZone(other);
            }

            @Override
            public Instant instant() {
                return whole.instant();
            }
        };
    }
}
