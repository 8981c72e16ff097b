package tenterbook.archive;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tenterbook.ledger.Erased;
import tenterbook.words.Message;

/**
 * The outcome of an erasure, for the person who asked for it and for the maker.
 *
 * @param done what was erased, without any name
 * @param left what was not, and must be done by hand
 */
public record ErasureReport(List<Message> done, List<Message> left) {
    public static ErasureReport of(Erased erased) {
        List<Message> done = new ArrayList<>();
        done.add(Message.of("erasure.record", "revisions", erased.revisions()));
        done.add(Message.of("erasure.older", "redacted", erased.redacted()));
        done.add(
                erased.changed().isEmpty()
                        ? Message.of("erasure.nothing-in-use")
                        : Message.of(
                                "erasure.in-use",
                                "records",
                                erased.changed().stream()
                                        .map(Object::toString)
                                        .collect(java.util.stream.Collectors.joining(", "))));
        done.add(Message.of("erasure.files", "files", erased.files()));
        done.add(Message.of("erasure.searches", "searches", erased.searches()));
        done.add(Message.of("erasure.drafts", "drafts", erased.drafts()));
        return new ErasureReport(
                done,
                Stream.concat(
                                erased.left().stream().map(place -> Message.of("erasure.left", "place", place)),
                                Stream.of("bags", "papers", "other-words", "disk")
                                        .map(each -> Message.of("erasure.left." + each)))
                        .toList());
    }

    /** The first sentence. */
    public static Message heading(Erased erased) {
        return Message.of("erasure.done", "revision", erased.erasure());
    }
}
