package tenterbook.labelling.care;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tenterbook.labelling.care.CareLine.About;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.labelling.rule.RuleTable;
import tenterbook.labelling.rule.TableText;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.words.Message;

/** Writes the lines of {@link CareWords} for one case in one market. */
final class CareWriter {
    private final CareCase about;
    private final RuleTable rules;
    private final Rule rule;
    private final CareEvidence evidence;
    private final CareDegrees degrees;
    private final List<CareLine> lines = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    CareWriter(CareCase about, RuleTable rules) {
        this.about = about;
        this.rules = rules;
        this.rule = rules.rule("care");
        this.evidence = new CareEvidence(about, rules);
        this.degrees = new CareDegrees(rules.fahrenheitFirst());
    }

    CareWords words() {
        wash();
        bleach();
        dry();
        iron();
        dryClean();
        warnings();
        questions.addAll(evidence.questions());
        if (lines.stream().allMatch(l -> l.about() == About.WARNING)) {
            lines.add(
                    0,
                    new CareLine(
                            About.WARNING,
                            CareWords.NO_TEST,
                            Message.of("care.no-judged-test").inEnglish(),
                            rule));
            questions.add(new Question(Message.of("care.ask.any-wash-test"), rule));
        }
        questions.addAll(CarePractice.questions(about, evidence, rules.rule("practice")));
        silence();
        lines.sort(Comparator.comparing(CareLine::about));
        return new CareWords(lines, questions, missing());
    }

    /** Asks what a reader would take from a treatment of which nothing is said, where the market has rules on it. */
    private void silence() {
        boolean cleaned = said(About.PROFESSIONAL_CARE);
        for (Rule silent : rules.rules().values()) {
            for (About treatment : About.values()) {
                String word = treatment.word().inEnglish();
                boolean matters =
                        treatment == About.WASHING ? !cleaned : evidence.wash().allowed();
                if (matters
                        && !said(treatment)
                        && (about.category() == null
                                || silent.values().contains(about.category().name()))) {
                    silent.askedAt("silent", word).ifPresent(questions::add);
                }
            }
        }
    }

    private boolean said(About treatment) {
        return lines.stream().anyMatch(line -> line.about() == treatment);
    }

    private @Nullable LabelRefusal missing() {
        if (about.category() == null || !rules.careNeeds().categories().contains(about.category())) {
            return null;
        }
        boolean stated = !evidence.wash().equals(CareEvidence.Verdict.UNKNOWN)
                || !rules.careNeeds().washing()
                        && !evidence.plain(Kind.DRY_CLEAN).equals(CareEvidence.Verdict.UNKNOWN);
        return stated
                ? null
                : new LabelRefusal(
                        Message.of(
                                "care.missing",
                                "category",
                                about.category(),
                                "cleaned",
                                CareEvidence.yes(!rules.careNeeds().washing())),
                        rules.rule("careNeeded"),
                        new TableText(rules.careNeeds().fix()));
    }

    private void wash() {
        CareEvidence.Verdict wash = evidence.wash();
        List<CareTest> machineFailed = evidence.failed(Kind.MACHINE_WASH);
        if (wash.allowed()) {
            boolean machine = wash.test().kind() == Kind.MACHINE_WASH;
            lines.add(washLine(machine ? "machine" : "hand", wash.test()));
            if (!machine && !machineFailed.isEmpty()) {
                add(About.WASHING, Message.of("care.no-machine-wash"), machineFailed.get(0));
            }
        } else if (wash.forbidden()) {
            add(About.WASHING, Message.of("care.no-wash"), wash.test());
        } else if (!machineFailed.isEmpty()) {
            add(About.WASHING, Message.of("care.no-machine-wash"), machineFailed.get(0));
        }
        if (evidence.washContradicted()) {
            questions.add(new Question(Message.of("care.ask.contradicted"), rule));
        }
    }

    private CareLine washLine(String how, CareTest test) {
        if (!CareEvidence.measured(test)) {
            questions.add(new Question(
                    Message.of("care.ask.temperature", "test", CareEvidence.words(test)), rules.rule("careWords")));
            return line(About.WASHING, Message.of("care.wash-untested", "how", how), CareEvidence.words(test), rule);
        }
        double celsius = evidence.washCelsius(test);
        String warmth = CareDegrees.warmth(celsius, rules.rule("careHeat"));
        if (celsius > rules.rule("careHeat").figure(2)) {
            questions.add(new Question(Message.of("care.ask.above-hot"), rules.rule("careWords")));
        }
        return line(
                About.WASHING,
                Message.of("care.wash", "how", how, "warmth", warmth, "degrees", degrees.of(celsius)),
                evidence.washWords(test),
                rules.rule("careWords"));
    }

    private void bleach() {
        CareEvidence.Verdict chlorine = evidence.plain(Kind.CHLORINE_BLEACH);
        CareEvidence.Verdict other = evidence.plain(Kind.OTHER_BLEACH);
        if (other.forbidden()) {
            add(About.BLEACHING, Message.of("care.no-bleach"), other.test());
        } else if (other.allowed() && !chlorine.allowed()) {
            add(About.BLEACHING, Message.of("care.non-chlorine-bleach"), other.test());
        } else if (chlorine.forbidden()) {
            add(About.BLEACHING, Message.of("care.no-chlorine-bleach"), chlorine.test());
        } else if (other.allowed()) {
            add(About.BLEACHING, Message.of("care.bleach"), chlorine.test());
        }
    }

    private void dry() {
        CareEvidence.Verdict tumble = evidence.heated(Kind.TUMBLE_DRY);
        if (tumble.forbidden()) {
            add(About.DRYING, Message.of("care.no-tumble-dry"), tumble.test());
        } else if (tumble.allowed()) {
            CareTest test = tumble.test();
            add(
                    About.DRYING,
                    Message.of(
                            "care.tumble-dry",
                            "limited",
                            CareEvidence.yes(CareEvidence.measured(test)),
                            "degrees",
                            degrees.atMost(test)),
                    test);
        }
        byTest(About.DRYING, Kind.LINE_DRY, Message.of("care.line-dry"), Message.of("care.no-line-dry"));
        byTest(About.DRYING, Kind.FLAT_DRY, Message.of("care.flat-dry"), Message.of("care.no-flat-dry"));
    }

    private void iron() {
        CareEvidence.Verdict iron = evidence.heated(Kind.IRON);
        if (iron.forbidden()) {
            add(About.IRONING, Message.of("care.no-iron"), iron.test());
        } else if (iron.allowed() && rules.ironWords() && CareEvidence.measured(iron.test())) {
            double celsius = CareEvidence.proven(iron.test());
            String heat = CareDegrees.ironHeat(celsius, rules.rule("careIron"));
            lines.add(line(
                    About.IRONING, ironed(heat, iron.test()), CareEvidence.words(iron.test()), rules.rule("careIron")));
        } else if (iron.allowed()) {
            add(About.IRONING, ironed("any", iron.test()), iron.test());
        }
    }

    private void dryClean() {
        String word = rules.dryClean();
        CareEvidence.Verdict dryClean = evidence.plain(Kind.DRY_CLEAN);
        boolean neither = dryClean.forbidden() && evidence.wash().forbidden();
        if (neither && !rules.cannotBeCleaned().isEmpty()) {
            lines.removeIf(l -> l.about() == About.WASHING);
            lines.add(new CareLine(
                    About.WASHING,
                    rules.cannotBeCleaned(),
                    Message.of(
                                    "care.two-tests",
                                    "one",
                                    CareEvidence.words(evidence.wash().test()),
                                    "other",
                                    CareEvidence.words(dryClean.test()))
                            .inEnglish(),
                    rules.rule("careNeeded")));
        } else {
            byTest(
                    About.PROFESSIONAL_CARE,
                    Kind.DRY_CLEAN,
                    Message.of("care.dry-clean", "words", word),
                    Message.of("care.no-dry-clean", "words", word.toLowerCase(Locale.ROOT)));
        }
    }

    private void warnings() {
        String spelling = rules.language().equals("en-US") ? "american" : "british";
        warning(Kind.RUB, Message.of("care.rub", "spelling", spelling));
        warning(Kind.WATER, Message.of("care.water"));
        warning(Kind.LIGHT, Message.of("care.light"));
    }

    private void warning(Kind kind, Message text) {
        evidence.failed(kind).stream().findFirst().ifPresent(t -> add(About.WARNING, text, t));
    }

    private void byTest(About of, Kind kind, Message allowed, Message forbidden) {
        CareEvidence.Verdict verdict = evidence.plain(kind);
        if (verdict.way() != CareEvidence.Way.UNKNOWN) {
            add(of, verdict.allowed() ? allowed : forbidden, verdict.test());
        }
    }

    private void add(About of, Message text, CareTest test) {
        lines.add(line(of, text, CareEvidence.words(test), rule));
    }

    private static CareLine line(About of, Message text, Message evidence, Rule rule) {
        return new CareLine(of, text.inEnglish(), evidence.inEnglish(), rule);
    }

    private Message ironed(String heat, CareTest test) {
        return Message.of(
                "care.iron",
                "heat",
                heat,
                "limited",
                CareEvidence.yes(CareEvidence.measured(test)),
                "degrees",
                degrees.atMost(test));
    }
}
