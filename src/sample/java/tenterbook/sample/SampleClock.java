package tenterbook.sample;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that shows what it is set to, so that the sample archive is written at believable times, each time the same. */
final class SampleClock extends Clock {
    private Instant now;

    SampleClock(Instant start) {
        this.now = start;
    }

    void set(Instant instant) {
        now = instant;
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.fixed(now, zone);
    }
}
