package tenterbook.imaging.pixels;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.words.Message;

/** What is said of a photograph whose pixels are not read. */
final class Unread {
    private Unread() {}

    static PhotoReader.Reading because(PhotoFacts facts, Message note) {
        boolean known = facts.width() != null && facts.height() != null;
        return new PhotoReader.Reading(
                List.of(),
                known ? PhotoReader.upright(facts, facts.width(), facts.height()) : null,
                known ? PhotoReader.upright(facts, facts.height(), facts.width()) : null,
                List.of(note.inEnglish()),
                Optional.empty());
    }

    /** What a decoder says of its trouble; many say nothing. */
    static Message undecoded(Exception e) {
        return e.getMessage() == null || e.getMessage().isBlank()
                ? Message.of("photo.not-decoded")
                : Message.of("photo.not-decoded-why", "why", e.getMessage().strip());
    }

    static PhotoReader.Reading tooManyPixels(PhotoFacts facts, long width, long height, long most) {
        return new PhotoReader.Reading(
                List.of(),
                PhotoReader.upright(facts, width, height),
                PhotoReader.upright(facts, height, width),
                List.of(Message.of(
                                "photo.too-many-pixels",
                                "width",
                                grouped(width),
                                "height",
                                grouped(height),
                                "most",
                                grouped(most / 1_000_000))
                        .inEnglish()),
                Optional.empty());
    }

    private static String grouped(long number) {
        return String.format(Locale.ROOT, "%,d", number);
    }
}
