package tenterbook.photo;

import java.util.List;
import tenterbook.colour.PaletteColour;
import tenterbook.measure.Digest;

public record Photo(
        Digest digest,
        String originalName,
        long bytes,
        String mediaType,
        Integer width,
        Integer height,
        int orientation,
        String taken,
        String camera,
        String lens,
        String iccProfile,
        boolean gps,
        boolean viewable,
        List<String> notes,
        List<PaletteColour> palette,
        String calibration) {}
