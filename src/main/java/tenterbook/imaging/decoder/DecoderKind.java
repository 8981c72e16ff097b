package tenterbook.imaging.decoder;

import java.nio.file.Path;
import java.util.List;

/** The decoders that this program can call, the preferred ones first. */
enum DecoderKind {
    /** Of libheif since 1.18. */
    HEIF_DEC("heif-dec", "png", true),
    /** The same program by its older name. */
    HEIF_CONVERT("heif-convert", "png", true),
    /** Part of macOS. Written from its manual and not tried. */
    SIPS("sips", "tiff", false);

    private final String program;
    private final String extension;
    private final boolean upright;

    DecoderKind(String program, String extension, boolean upright) {
        this.program = program;
        this.extension = extension;
        this.upright = upright;
    }

    String program() {
        return program;
    }

    /** Of the pixels that it writes, without loss, with the colour profile of the picture. */
    String extension() {
        return extension;
    }

    /** Whether its pixels stand upright whatever its output says; else its output's own orientation holds. */
    boolean upright() {
        return upright;
    }

    /** The words of the call; no shell reads them. */
    List<String> command(Path path, Path picture, Path output) {
        return this == SIPS
                ? List.of(path.toString(), "-s", "format", "tiff", picture.toString(), "--out", output.toString())
                : List.of(path.toString(), picture.toString(), output.toString());
    }
}
