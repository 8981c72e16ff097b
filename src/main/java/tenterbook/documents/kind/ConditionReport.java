package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
import tenterbook.labelling.LightAdvice;
import tenterbook.ledger.Saved;
import tenterbook.measure.PartialDate;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Signatory;
import tenterbook.words.Message;
import tenterbook.words.PaperLanguage;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * A condition report of one examination, as it passes between maker, museum, gallery and carrier: what the piece is, who looked
 * how and at what, advice for handling, the photographs with numbered marks, a table of the numbered observations, what changed
 * since the examination before, and lines to sign.
 *
 * @see "EN 16095:2012, Conservation of cultural property, Condition recording for movable cultural heritage: its parts from
 *     memory"
 */
public final class ConditionReport {
    private final Archive archive;
    private final DocumentFacts subject;
    private final Examination examination;

    private ConditionReport(Archive archive, DocumentFacts subject, Examination examination) {
        this.archive = archive;
        this.subject = subject;
        this.examination = examination;
    }

    /**
     * @param request its page and its language count
     * @throws IllegalArgumentException where the piece is not the examination's
     */
    public static DocumentDraft of(
            Archive archive, Saved<Examination> saved, Saved<Piece> piece, DocumentSettings request) {
        return PaperLanguage.write(
                archive.conventions().in(request.language()), () -> composed(archive, saved, piece, request));
    }

    private static DocumentDraft composed(
            Archive archive, Saved<Examination> saved, Saved<Piece> piece, DocumentSettings request) {
        Examination examination = saved.record();
        if (!examination.piece().equals(piece.record().number())) {
            throw Refusal.of(
                    "document.condition.other-piece",
                    "examination",
                    examination.id(),
                    "piece",
                    examination.piece(),
                    "other",
                    piece.record().number());
        }
        DocumentFacts subject = DocumentFacts.of(archive, piece);
        ConditionReport report = new ConditionReport(archive, subject, examination);
        DocumentText text = new DocumentText(
                DocumentKind.CONDITION_REPORT.code(),
                DocumentKind.CONDITION_REPORT.template(),
                DocumentWords.words("document.condition.title"),
                subject.running(),
                subject.house(),
                List.of(new DocumentText.DocumentSection(subject.number(), report.blocks(saved.version()))));
        return new DocumentDraft(
                text,
                List.of(piece),
                DocumentSettings.of(DocumentKind.CONDITION_REPORT)
                        .on(request.page())
                        .in(request.language()),
                new DocumentOrigin(null, examination.id().value(), saved.version()));
    }

    private List<Block> blocks(int version) {
        List<Block> blocks = new ArrayList<>();
        ConditionObservations observations = new ConditionObservations(archive, examination);
        blocks.add(new Block.Heading(1, subject.shown() + "  " + subject.title()));
        lacking().forEach(lack -> blocks.add(DocumentWords.missing(lack)));
        blocks.add(new Block.Facts(identification(version)));
        blocks.add(DocumentWords.heading(2, "document.heading.examination"));
        blocks.add(new Block.Facts(circumstances()));
        blocks.add(DocumentWords.heading(2, "document.heading.state-of-the-whole"));
        blocks.add(new Block.Paragraph(state()));
        blocks.add(DocumentWords.heading(2, "document.heading.how-far-it-was-looked-at"));
        blocks.add(zones());
        advice(blocks);
        new ConditionPhotographs(archive, examination).addTo(blocks);
        blocks.add(DocumentWords.heading(2, "document.heading.what-was-seen"));
        blocks.add(observations.seen());
        observations.addChanges(blocks);
        hands(blocks);
        blocks.add(DocumentWords.note(LightAdvice.sources(List.of(subject.facts()))));
        blocks.add(DocumentWords.note(DocumentWords.words("document.condition.standard")));
        return blocks;
    }

    private List<String> lacking() {
        List<String> lacking = new ArrayList<>();
        if (examination.photos().isEmpty()) {
            lacking.add(DocumentWords.words("document.condition.no-photograph"));
        }
        Denial.NO_EXAMINER.of(examination).ifPresent(lacking::add);
        if (!examination.when().known()) {
            lacking.add(DocumentWords.words("document.condition.no-day"));
        }
        return lacking;
    }

    private List<Block.Fact> identification(int version) {
        Piece piece = subject.piece();
        return List.of(
                DocumentWords.fact(
                        "document.fact.report",
                        Message.of("document.condition.version", "examination", examination.id(), "version", version)),
                DocumentWords.fact("document.fact.object", piece.category() == null ? "" : piece.category()),
                DocumentWords.fact("document.fact.maker", subject.maker()),
                DocumentWords.fact("document.fact.cloth", subject.materials()),
                DocumentWords.fact("document.fact.size-on-record", DocumentWords.size(piece)),
                DocumentWords.fact("document.fact.size-at-examination", sizeThen()),
                DocumentWords.fact(
                        "document.fact.inscriptions-and-markings",
                        piece.particulars().inscriptions()));
    }

    private String sizeThen() {
        boolean any = examination.length().recorded() || examination.width().recorded();
        return any
                ? DocumentWords.size(examination.length(), examination.width())
                : DocumentWords.words("document.condition.not-measured");
    }

    private List<Block.Fact> circumstances() {
        return List.of(
                DocumentWords.fact("document.fact.day", examination.when()),
                DocumentWords.fact("document.fact.reason", DocumentWords.choice(examination.reason())),
                DocumentWords.fact("document.fact.place", examination.place()),
                DocumentWords.fact("document.fact.examined-by", person(examination.examiner(), examination.party())),
                DocumentWords.fact("document.fact.means", examination.means()),
                DocumentWords.fact("document.fact.made-against", madeAgainst()));
    }

    private Object madeAgainst() {
        List<Examination> before = subject.facts().condition().before(examination);
        List<PartialDate> days = subject.facts().condition().withoutReport(subject.piece(), examination);
        if (examination.earlier() != null) {
            return examination.earlier();
        }
        if (before.isEmpty() && !days.isEmpty()) {
            String listed = days.stream()
                    .map(day -> day.recorded() ? day.onPaper() : DocumentWords.words("document.date-not-recorded"))
                    .collect(Collectors.joining(", "));
            return Message.of("document.condition.no-earlier-report", "days", listed)
                    .onPaper();
        }
        return Denial.NO_EARLIER_EXAMINATION.unless(
                before, () -> DocumentWords.words("document.condition.not-compared"));
    }

    private String person(String name, PartyId party) {
        String title = party == null
                ? ""
                : archive.party(party.value()).map(of -> of.title()).orElse(party.value());
        return name.equals(title) ? name : DocumentWords.joined(", ", name, title);
    }

    private String state() {
        String state = Denial.NOT_JUDGED.unless(
                examination, () -> Written.capital(DocumentWords.choice(examination.overall())) + ".");
        return DocumentWords.joined(" ", state, Written.stop(examination.summary()));
    }

    private Block zones() {
        if (examination.zones().isEmpty()) {
            return DocumentWords.note(DocumentWords.words("document.condition.not-recorded"));
        }
        return new Block.Facts(examination.zones().stream()
                .map(zone -> DocumentWords.named(
                        Written.capital(zone.zone()),
                        DocumentWords.joined("; ", DocumentWords.choice(zone.seen()), zone.note())))
                .toList());
    }

    private void advice(List<Block> blocks) {
        blocks.add(DocumentWords.heading(2, "document.heading.handling-light-and-packing"));
        blocks.add(new Block.Facts(List.of(
                DocumentWords.fact("document.fact.handling", examination.handling()),
                DocumentWords.fact("document.fact.light-showing", examination.light()),
                DocumentWords.fact("document.fact.packing", examination.packing()))));
        blocks.add(DocumentWords.caution(
                Message.of("document.condition.light", "caution", LightAdvice.caution(subject.facts()))
                        .onPaper()));
        blocks.add(DocumentWords.caution(DocumentWords.words("document.condition.handling")));
    }

    private void hands(List<Block> blocks) {
        blocks.add(DocumentWords.heading(2, "document.heading.handing-over"));
        blocks.add(new Block.Paragraph(DocumentWords.words("document.condition.who-signs")));
        blocks.add(DocumentWords.blank("document.blank.remarks", 2));
        blocks.add(new Block.Signatures(Stream.of(
                        hand("document.condition.handed-over", examination.handedOver()),
                        hand("document.condition.received", examination.received()))
                .toList()));
    }

    private String hand(String key, Signatory signatory) {
        String who = person(signatory.name(), signatory.party());
        String when = signatory.when().recorded() ? signatory.when().onPaper() : "";
        return DocumentWords.joined(
                ", ",
                Message.of(key, "named", DocumentWords.yes(!who.isEmpty()), "person", who)
                        .onPaper(),
                when.isEmpty() ? DocumentWords.words("document.condition.date-and-signature") : when);
    }
}
