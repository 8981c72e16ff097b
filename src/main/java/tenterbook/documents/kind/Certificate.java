package tenterbook.documents.kind;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import tenterbook.board.BoardPair;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.VerificationCode;
import tenterbook.facts.Denial;
import tenterbook.facts.Whereabouts;
import tenterbook.labelling.HowMade;
import tenterbook.measure.DateWords;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.PaperLanguage;
import tenterbook.words.Written;

/** A piece's making and whereabouts from the maker's archive, with a code by which the record can be verified. */
final class Certificate {
    private Certificate() {}

    static DocumentText of(DocumentFacts subject, DocumentSettings request) {
        Piece piece = subject.piece();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(1, subject.shown() + "  " + subject.title()));
        subject.photos().stream()
                .limit(2)
                .forEach(photo -> blocks.add(
                        new Block.Photograph(photo.photo(), Block.Extent.HALF, photo.caption(), "", List.of())));
        blocks.add(new Block.Facts(facts(subject, piece)));
        blocks.add(DocumentWords.heading(2, "document.heading.where-it-has-been"));
        blocks.add(Denial.NOTHING_SINCE_MADE
                .of(subject.facts())
                .<Block>map(Block.Paragraph::new)
                .orElseGet(() -> new Block.Facts(been(subject, request))));
        DocumentWords.paragraphs(request.text()).forEach(blocks::add);
        blocks.add(new Block.Paragraph(DocumentWords.words("document.certificate.states")));
        blocks.add(new Block.Signatures(List.of(Message.of(
                        "document.certificate.sign",
                        "maker",
                        subject.facts().origin().maker().isEmpty()
                                ? Message.of("document.certificate.the-maker")
                                : subject.facts().origin().maker())
                .onPaper())));
        blocks.addAll(verifying(subject));
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().onPaper(),
                subject.running(),
                subject.house(),
                List.of(new DocumentText.DocumentSection(subject.number(), blocks)));
    }

    /** A certificate of a piece without making, picture and size would certify nothing. */
    static List<Written> lacking(DocumentFacts subject) {
        boolean known = subject.facts().dyed()
                || !subject.piece().photos().isEmpty()
                || subject.piece().length().known()
                || subject.piece().width().known();
        return known ? List.of() : List.of(Message.of("document.certificate.lacks", "piece", subject.number()));
    }

    private static List<Block.Fact> facts(DocumentFacts subject, Piece piece) {
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact("document.fact.maker", subject.maker()));
        facts.add(DocumentWords.fact(
                "document.fact.title", DocumentWords.joined(" / ", piece.title(), piece.otherTitle())));
        facts.add(DocumentWords.fact("document.fact.finished", piece.finished()));
        if (!piece.edition().isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.edition", piece.editionOnPapers()));
        }
        facts.add(DocumentWords.fact("document.fact.size", Written.capital(DocumentWords.size(piece))));
        facts.add(DocumentWords.fact("document.fact.cloth", Written.capital(subject.materials())));
        facts.add(DocumentWords.fact(
                "document.fact.boards",
                subject.facts().boardsUsed().stream().map(BoardPair::title).collect(Collectors.joining(", "))));
        facts.add(DocumentWords.fact("document.fact.how-it-was-made", HowMade.words(subject.facts())));
        return facts;
    }

    /** Its events and those from other records; where only the status or the holder is known, that. */
    private static List<Block.Fact> been(DocumentFacts subject, DocumentSettings request) {
        List<Happened> been = new ArrayList<>();
        subject.piece().events().stream()
                .filter(event -> event.kind() != EventKind.PHOTOGRAPHED)
                .map(event -> event(subject, event, request))
                .forEach(been::add);
        subject.facts()
                .condition()
                .unnoted(subject.piece())
                .forEach(report -> been.add(new Happened(
                        report.when(),
                        Message.of("document.certificate.examined", "report", report.id())
                                .onPaper())));
        boolean saidToBeDyed =
                subject.piece().events().stream().anyMatch(event -> event.kind() == EventKind.DYED_AGAIN);
        if (!saidToBeDyed) {
            subject.facts().clampings().stream()
                    .skip(1)
                    .forEach(again -> been.add(
                            new Happened(again.when(), DocumentWords.words("document.certificate.dyed-again"))));
        }
        if (been.stream().allMatch(each -> each.when.from() != null)) {
            been.sort(Comparator.comparing(each -> each.when.from()));
        }
        Whereabouts now = subject.facts().whereabouts();
        if (been.isEmpty() || !now.disagreement().isEmpty()) {
            String with = now.holder().isPresent() && request.disclosure().names()
                    ? subject.named(now.holder().get(), request.disclosure().buyers())
                    : "";
            been.add(new Happened(
                    PartialDate.UNRECORDED,
                    DocumentWords.joined(
                            ", ",
                            Message.of(
                                            "document.certificate.by-its-status",
                                            "status",
                                            now.away()
                                                    ? now.statusInWords()
                                                    : Message.of("document.certificate.with-a-holder"))
                                    .onPaper(),
                            with)));
        }
        return been.stream()
                .map(each -> new Block.Fact(
                        each.when.recorded() ? each.when.onPaper() : DocumentWords.words("document.date-not-recorded"),
                        each.words))
                .toList();
    }

    private record Happened(PartialDate when, String words) {}

    /** Names only where chosen; never prices and notes. */
    private static Happened event(DocumentFacts subject, Event event, DocumentSettings request) {
        boolean named = event.party() != null && request.disclosure().names();
        Message words = Message.of(
                "document.certificate.event",
                "event",
                Written.capital(PaperLanguage.word(event.kind())),
                "named",
                DocumentWords.yes(named),
                "person",
                named ? subject.named(event.party(), request.disclosure().buyers()) : "",
                "lasting",
                DocumentWords.yes(event.until().recorded()),
                "until",
                event.until());
        return new Happened(event.when(), words.onPaper());
    }

    private static List<Block> verifying(DocumentFacts subject) {
        VerificationCode code = VerificationCode.of(subject.newest().hash());
        List<Block> blocks = new ArrayList<>();
        blocks.add(DocumentWords.heading(2, "document.heading.how-to-verify-this"));
        blocks.add(new Block.Code(
                DocumentWords.joined(
                        "\n",
                        subject.number().value(),
                        code.toString(),
                        Message.of(
                                        "document.certificate.revision",
                                        "sequence",
                                        subject.newest().sequence())
                                .onPaper()),
                code.toString(),
                Message.of(
                                "document.certificate.digits",
                                "sequence",
                                subject.newest().sequence(),
                                "piece",
                                subject.number(),
                                "version",
                                subject.newest().version(),
                                "day",
                                DateWords.day(
                                        LocalDate.ofInstant(subject.newest().writtenAt(), ZoneOffset.UTC)))
                        .onPaper()));
        blocks.add(new Block.Items(
                true,
                List.of(
                        DocumentWords.words("document.certificate.ask-for-a-copy"),
                        Message.of(
                                        "document.certificate.take-the-line",
                                        "sequence",
                                        subject.newest().sequence(),
                                        "piece",
                                        subject.number(),
                                        "version",
                                        subject.newest().version())
                                .onPaper(),
                        DocumentWords.words(
                                subject.newest().format() == 1
                                        ? "document.certificate.take-the-digest-of-format-1"
                                        : "document.certificate.take-the-digest"))));
        blocks.add(DocumentWords.note(DocumentWords.words("document.certificate.what-it-shows")));
        return blocks;
    }
}
