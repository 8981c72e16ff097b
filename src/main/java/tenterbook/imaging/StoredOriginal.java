package tenterbook.imaging;

import java.nio.file.Path;
import tenterbook.imaging.file.MediaType;
import tenterbook.measure.Digest;

/**
 * An original in its place.
 *
 * @param digest SHA-256 of its bytes, which is its name
 * @param path where it lies
 * @param bytes how long it is
 * @param mediaType from its bytes
 * @param alreadyThere whether the very same bytes were kept before
 */
public record StoredOriginal(Digest digest, Path path, long bytes, MediaType mediaType, boolean alreadyThere) {}
