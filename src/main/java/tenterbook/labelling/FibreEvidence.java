package tenterbook.labelling;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.material.Cloth;
import tenterbook.material.FibreShare;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;

/** What the printed shares of fibres rest on: each one without support is asked about. */
final class FibreEvidence {
    private FibreEvidence() {}

    static List<Question> questions(Collection<Cloth> cloths, Rule rule) {
        List<Question> questions = new ArrayList<>();
        for (Cloth cloth : cloths) {
            for (FibreShare share : cloth.content()) {
                question(cloth, share).forEach(asks -> questions.add(new Question(asks, rule)));
            }
        }
        return questions;
    }

    private static List<Message> question(Cloth cloth, FibreShare share) {
        List<Message> asked = new ArrayList<>();
        if (share.measured() != null) {
            if (share.percent() != null && !share.agrees()) {
                asked.add(Message.of(
                        "label.evidence.differs",
                        "cloth",
                        cloth.title(),
                        "fibre",
                        share.fibre(),
                        "declared",
                        NumberWords.plain(share.percent()),
                        "measured",
                        NumberWords.plain(share.measured())));
            }
        } else if (share.percent() != null && share.evidence() == null) {
            if (cloth.contentEvidence().isEmpty()) {
                asked.add(Message.of("label.evidence.none", "cloth", cloth.title(), "fibre", share.fibre()));
            }
        } else if (share.percent() != null && !share.evidence().supportsShare()) {
            asked.add(Message.of(
                    "label.evidence.weak",
                    "cloth",
                    cloth.title(),
                    "fibre",
                    share.fibre(),
                    "evidence",
                    share.evidence()));
        }
        return asked;
    }
}
