package tenterbook.web.recognition;

import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.pixels.RgbPicture;
import tenterbook.measure.Digest;
import tenterbook.search.recognition.Recogniser;

/** The last pictures that were compared with the archive, kept in memory alone; one is compared at a time. */
public final class RunningRecognitions implements AutoCloseable {
    private static final int KEPT = 8;
    /** Long edge of the picture that is kept to be shown, in pixels; 3 MB each. */
    private static final int SHOWN = 960;

    private final Recogniser recogniser;
    private final SecureRandom random = new SecureRandom();
    private final Map<String, RunningRecognition> kept = new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, RunningRecognition> eldest) {
            if (size() > KEPT) {
                eldest.getValue().stop();
                return true;
            }
            return false;
        }
    };
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "recognition");
        made.setDaemon(true);
        return made;
    });

    public RunningRecognitions(Recogniser recogniser) {
        this.recogniser = recogniser;
    }

    /**
     * @param picture long edge at most 2,048 pixels, upright
     * @param photo which photograph of the archive it is; null if it is none
     */
    public RunningRecognition start(Pixels picture, @Nullable Digest photo) {
        byte[] token = new byte[12];
        random.nextBytes(token);
        Pixels small = new RgbPicture(picture.argb(), picture.width(), picture.height())
                .within(SHOWN)
                .pixels();
        RunningRecognition started = new RunningRecognition(HexFormat.of().formatHex(token), small, photo);
        synchronized (kept) {
            kept.put(started.token(), started);
        }
        thread.execute(() -> started.run(recogniser, picture));
        return started;
    }

    /** Empty where it was never started, or many others were started since. */
    Optional<RunningRecognition> find(String token) {
        synchronized (kept) {
            return Optional.ofNullable(kept.get(token));
        }
    }

    @Override
    public void close() {
        synchronized (kept) {
            kept.values().forEach(RunningRecognition::stop);
        }
        thread.shutdown();
    }
}
