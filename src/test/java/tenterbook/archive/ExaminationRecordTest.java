package tenterbook.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.imaging.Photo;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.condition.ChangeSinceLast;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.PhotoMark;
import tenterbook.piece.condition.Reports;

class ExaminationRecordTest {
    @TempDir
    Path folder;

    private static Photo photo(Digest digest) {
        return new Photo(
                digest,
                "a.jpg",
                1,
                "image/jpeg",
                3,
                2,
                1,
                null,
                null,
                null,
                null,
                false,
                false,
                null,
                null,
                null,
                null);
    }

    private static void whatItNames(Archive archive) {
        archive.ledger().write("test", act -> {
            act.create(Kinds.PARTY, new Party(new PartyId("museu-do-sarelho"), "Museu do Sarelho", "museum", "", ""));
            act.create(Kinds.PHOTO, photo(Reports.FRONT));
            act.create(Kinds.PHOTO, photo(Reports.BACK));
            return act.create(
                    Kinds.PIECE,
                    new Piece(
                            new PieceNumber("V24-013"),
                            "Terraço",
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null));
        });
    }

    @Test
    void anExaminationComesBackAsItWasAndNamesWhatItRestsOn() {
        Examination first = Reports.of(
                "E24-001",
                "about March 2024",
                "",
                Reports.seen(1, "stain", "about 8 mm", null, PhotoMark.point(Reports.FRONT, 0.42, 0.31)));
        Examination second = Reports.of(
                "E24-002",
                "2024-09-30",
                "E24-001",
                Reports.seen(
                        1,
                        "stain",
                        "6 to 8 mm",
                        ChangeSinceLast.STILL_THERE,
                        new PhotoMark(Reports.BACK, 0.1, 0.2, 0.3, 0.4)));
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            whatItNames(archive);
            archive.ledger().write("test", act -> {
                act.create(Kinds.EXAMINATION, first);
                return act.create(Kinds.EXAMINATION, second);
            });

            assertThat(archive.examinationsOf(new PieceNumber("V24-013"))).containsExactly(first, second);
            assertThat(archive.examinationsOf(new PieceNumber("V24-001"))).isEmpty();
            assertThat(archive.ledger().references(Kinds.EXAMINATION.key("E24-002")))
                    .containsExactlyInAnyOrder(
                            Kinds.PIECE.key("V24-013"),
                            Kinds.PHOTO.key(Reports.FRONT.hex()),
                            Kinds.PHOTO.key(Reports.BACK.hex()),
                            Kinds.PARTY.key("museu-do-sarelho"),
                            new RecordKey("examination", "E24-001"));
            assertThat(archive.ledger().check().run(Progress.UNWATCHED)).isEmpty();
            assertThatThrownBy(() -> archive.ledger().write("test", act -> {
                        act.withdraw(Kinds.EXAMINATION, "E24-001", 1, "");
                        return null;
                    }))
                    .isInstanceOf(StillReferenced.class);
        }
    }

    @Test
    void whatNobodyEnteredIsLeftOut() throws Exception {
        Examination bare = ExaminationRecord.EXAMINATION.fromText("{\"id\":\"E24-001\",\"piece\":\"V24-013\"}");
        assertThat(bare.photos()).isEqualTo(List.of());
        assertThat(ExaminationRecord.EXAMINATION.toJson(bare).toString())
                .isEqualTo("{\"id\":\"E24-001\",\"piece\":\"V24-013\"}");
        Examination said = Reports.of("E24-001", "2024-09-30", "", Reports.seen(1, "hole", "", null));
        assertThat(ExaminationRecord.EXAMINATION.toJson(said).toString())
                .contains("\"handedOver\"")
                .doesNotContain("\"received\"", "\"standing\"", "\"extent\"");
    }
}
