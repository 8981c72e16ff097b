package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import tenterbook.board.BoardPair;
import tenterbook.facts.Denial;
import tenterbook.facts.Whereabouts;
import tenterbook.label.HowMade;
import tenterbook.label.document.Block;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentText;
import tenterbook.label.document.VerificationCode;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;

/** What the maker's archive tells of a piece's making and whereabouts, with a code by which the record can be compared. */
final class Certificate {
    private Certificate() {}

    static DocumentText of(Told told, DocumentSettings request) {
        Piece piece = told.piece();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(1, told.number() + "  " + told.title()));
        told.photos().stream()
                .limit(2)
                .forEach(photo -> blocks.add(
                        new Block.Photograph(photo.photo(), Block.Extent.HALF, photo.caption(), "", List.of())));
        blocks.add(new Block.Facts(facts(told, piece)));
        blocks.add(new Block.Heading(2, "Where it has been"));
        blocks.add(Denial.NOTHING_SINCE_MADE
                .of(told.facts())
                .<Block>map(Block.Paragraph::new)
                .orElseGet(() -> new Block.Facts(been(told, request))));
        Say.paragraphs(request.text()).forEach(blocks::add);
        blocks.add(
                new Block.Paragraph(
                        "The maker states that the piece described here is the one recorded under this number in the maker’s archive."));
        blocks.add(new Block.Signatures(List.of((told.facts().origin().maker().isEmpty()
                        ? "The maker"
                        : told.facts().origin().maker())
                + ": place, date")));
        blocks.addAll(verifying(told));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().toString(),
                told.running(),
                told.house(),
                List.of(new DocumentText.Part(told.number(), blocks)));
    }

    private static List<Block.Fact> facts(Told told, Piece piece) {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Say.fact("Maker", told.maker()));
        facts.add(Say.fact("Title", Say.joined(" / ", piece.title(), piece.otherTitle())));
        facts.add(Say.fact("Finished", piece.finished()));
        if (!piece.edition().isEmpty()) {
            facts.add(Say.fact("Edition", piece.edition()));
        }
        facts.add(Say.fact("Size", Say.capital(Say.size(piece))));
        facts.add(Say.fact("Cloth", Say.capital(told.cloths())));
        facts.add(Say.fact(
                "Boards",
                told.facts().boardsUsed().stream().map(BoardPair::title).collect(Collectors.joining(", "))));
        facts.add(Say.fact("How it was made", HowMade.words(told.facts())));
        return facts;
    }

    /** Its events, and what other records say happened to it; where only the status or the holder is known, that. */
    private static List<Block.Fact> been(Told told, DocumentSettings request) {
        List<Happened> been = new ArrayList<>();
        told.piece().events().stream()
                .filter(event -> event.kind() != EventKind.PHOTOGRAPHED)
                .map(event -> event(told, event, request))
                .forEach(been::add);
        told.facts()
                .condition()
                .unnoted(told.piece())
                .forEach(report -> been.add(new Happened(report.when(), "Examined, report " + report.id())));
        boolean saidToBeDyed = told.piece().events().stream().anyMatch(event -> event.kind() == EventKind.DYED_AGAIN);
        if (!saidToBeDyed) {
            told.facts().clampings().stream()
                    .skip(1)
                    .forEach(again -> been.add(new Happened(again.when(), "Dyed again")));
        }
        if (been.stream().allMatch(each -> each.when.from() != null)) {
            been.sort(Comparator.comparing(each -> each.when.from()));
        }
        Whereabouts now = told.facts().whereabouts();
        if (been.isEmpty() || !now.disagreement().isEmpty()) {
            String with = now.holder().isPresent() && request.disclosure().names()
                    ? told.named(now.holder().get(), request.disclosure().buyers())
                    : "";
            been.add(new Happened(
                    PartialDate.UNRECORDED,
                    Say.joined(", ", "By its status: " + (now.away() ? now.statusInWords() : "with a holder"), with)));
        }
        return been.stream()
                .map(each ->
                        new Block.Fact(each.when.recorded() ? each.when.toString() : "date not recorded", each.words))
                .toList();
    }

    private record Happened(PartialDate when, String words) {}

    /** People are named only where that was chosen; prices and notes never. */
    private static Happened event(Told told, Event event, DocumentSettings request) {
        String until = event.until().recorded() ? " until " + event.until() : "";
        String with = event.party() == null
                ? ""
                : request.disclosure().names()
                        ? ", " + told.named(event.party(), request.disclosure().buyers())
                        : "";
        return new Happened(event.when(), Say.capital(event.kind().toString()) + with + until);
    }

    private static List<Block> verifying(Told told) {
        VerificationCode code = VerificationCode.of(told.newest().hash());
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(2, "How to verify this"));
        blocks.add(new Block.Code(
                Say.joined(
                        "\n",
                        told.number().value(),
                        code.toString(),
                        "revision " + told.newest().sequence()),
                code.toString(),
                "The first 16 digits of the SHA-256 of revision %d of the maker’s ledger: piece %s, version %d, saved %s."
                        .formatted(
                                told.newest().sequence(),
                                told.number(),
                                told.newest().version(),
                                told.newest().writtenAt().toString().replaceAll("T.*", ""))));
        blocks.add(
                new Block.Items(
                        true,
                        List.of(
                                "Ask the maker for a packed copy of the archive. In its data folder, ledger.jsonl holds one revision on each line.",
                                "Take the line with \"sequence\":%d and cut out of it the words \"hash\":\"…\", with the comma after them; nothing else."
                                        .formatted(told.newest().sequence()),
                                "With any SHA-256 tool take the digest of what is left, without a line end. It must begin with the digits above.")));
        blocks.add(
                Say.note(
                        "Agreement shows that the record is the one this certificate was made from, unchanged since. It does not show that what was recorded is true, nor that a copy without the later revisions is complete; that rests with the maker."));
        return blocks;
    }
}
