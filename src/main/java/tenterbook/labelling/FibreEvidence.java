package tenterbook.labelling;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.material.Cloth;
import tenterbook.material.FibreShare;
import tenterbook.measure.NumberWords;
import tenterbook.piece.label.PieceComponent;
import tenterbook.words.Message;

/** What the printed shares of fibres rest on: each one without support is asked about. */
final class FibreEvidence {
    private FibreEvidence() {}

    static List<Question> questions(Collection<Cloth> cloths, List<PieceComponent> parts, Rule rule) {
        List<Message> asked = new ArrayList<>();
        for (Cloth cloth : cloths) {
            cloth.content().forEach(share -> asked.addAll(question(cloth.title(), cloth.contentEvidence(), share)));
        }
        for (PieceComponent part : parts) {
            part.fibres().forEach(share -> asked.addAll(question(part.name(), "", share)));
        }
        return asked.stream().map(asks -> new Question(asks, rule)).toList();
    }

    private static List<Message> question(String cloth, String evidence, FibreShare share) {
        List<Message> asked = new ArrayList<>();
        if (share.measured() != null) {
            if (share.percent() != null && !share.agrees()) {
                asked.add(Message.of(
                        "label.evidence.differs",
                        "cloth",
                        cloth,
                        "fibre",
                        share.fibre(),
                        "declared",
                        NumberWords.plain(share.percent()),
                        "measured",
                        NumberWords.plain(share.measured())));
            }
        } else if (share.percent() != null && share.evidence() == null) {
            if (evidence.isEmpty()) {
                asked.add(Message.of("label.evidence.none", "cloth", cloth, "fibre", share.fibre()));
            }
        } else if (share.percent() != null && !share.evidence().supportsShare()) {
            asked.add(Message.of(
                    "label.evidence.weak", "cloth", cloth, "fibre", share.fibre(), "evidence", share.evidence()));
        }
        return asked;
    }
}
