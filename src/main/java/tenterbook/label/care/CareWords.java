package tenterbook.label.care;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tenterbook.label.care.CareLine.About;
import tenterbook.label.rule.Market;
import tenterbook.label.rule.Question;
import tenterbook.label.rule.Refusal;
import tenterbook.label.rule.Rule;
import tenterbook.label.rule.RuleTable;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;

/**
 * Care in words, from recorded tests alone. A treatment is offered only where a test of it passed, and forbidden only where
 * a test of it failed; nothing is inferred from one to the other. Temperatures are the test's own and greatest ones. What is
 * commonly held of the materials is asked about and never printed.
 *
 * @param lines as printed, in the order of ISO 3758, warnings last; never empty
 * @param questions what the tests leave open
 * @param missing why a label that must state care cannot; null where it need not or does
 */
public record CareWords(
        List<CareLine> lines,
        List<Question> questions,
        @Nullable Refusal missing) {
    /** What stands on paper where no judged test is on record. */
    public static final String NO_TEST = "No care test is on record. Ask the maker before washing.";

    public CareWords {
        lines = List.copyOf(lines);
        questions = List.copyOf(questions);
    }

    /** As {@link #of(CareCase, Market)}, of tests alone. */
    public static CareWords of(List<CareTest> tests, Market market) {
        return of(CareCase.of(tests), market);
    }

    public static CareWords of(CareCase about, Market market) {
        return new Writing(about, market.rules()).words();
    }

    private static final class Writing {
        private final CareCase about;
        private final RuleTable rules;
        private final Rule rule;
        private final CareEvidence evidence;
        private final List<CareLine> lines = new ArrayList<>();
        private final List<Question> questions = new ArrayList<>();

        Writing(CareCase about, RuleTable rules) {
            this.about = about;
            this.rules = rules;
            this.rule = rules.rule("care");
            this.evidence = new CareEvidence(about, rules);
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
                                NO_TEST,
                                "no judged test of washing, bleaching, drying, ironing or dry cleaning is on record",
                                rule));
                questions.add(new Question(
                        "Is there a wash test of a strip dyed with this piece? No care words can be printed without one",
                        rule));
            }
            questions.addAll(CarePractice.questions(about, evidence, rules.rule("practice")));
            lines.sort(Comparator.comparing(CareLine::about));
            return new CareWords(lines, questions, missing());
        }

        private @Nullable Refusal missing() {
            if (about.category() == null || !rules.careNeeds().categories().contains(about.category())) {
                return null;
            }
            boolean stated = !evidence.wash().equals(CareEvidence.Verdict.UNKNOWN)
                    || !rules.careNeeds().washing()
                            && !evidence.plain(Kind.DRY_CLEAN).equals(CareEvidence.Verdict.UNKNOWN);
            return stated
                    ? null
                    : new Refusal(
                            "No fitting test says how this %s is washed%s"
                                    .formatted(
                                            about.category(), rules.careNeeds().washing() ? "" : " or dry-cleaned"),
                            rules.rule("careNeeded"),
                            rules.careNeeds().fix());
        }

        private void wash() {
            CareEvidence.Verdict wash = evidence.wash();
            List<CareTest> machineFailed = evidence.judged(Kind.MACHINE_WASH, false);
            if (wash.allowed()) {
                boolean machine = wash.test().kind() == Kind.MACHINE_WASH;
                lines.add(washLine(machine ? "Machine wash" : "Hand wash", wash.test()));
                if (!machine && !machineFailed.isEmpty()) {
                    add(About.WASHING, "Do not machine wash.", machineFailed.get(0));
                }
            } else if (wash.forbidden()) {
                add(About.WASHING, "Do not wash.", wash.test());
            } else if (!machineFailed.isEmpty()) {
                add(About.WASHING, "Do not machine wash.", machineFailed.get(0));
            }
            if (evidence.washContradicted()) {
                questions.add(new Question(
                        "A wash test passed and another failed at the same or a lower temperature; which one holds? Until that is said the warning is printed",
                        rule));
            }
        }

        private CareLine washLine(String how, CareTest test) {
            if (!CareEvidence.measured(test)) {
                questions.add(new Question(
                        "At what temperature was the %s made? Without it no temperature can be printed"
                                .formatted(CareEvidence.words(test)),
                        rules.rule("careWords")));
                return new CareLine(
                        About.WASHING, how + ". Tested temperature not recorded.", CareEvidence.words(test), rule);
            }
            double celsius = evidence.washCelsius(test);
            String warmth = celsius <= 30 ? "cold" : celsius < 45 ? "warm" : "hot";
            if (celsius > 63) {
                questions.add(new Question(
                        "The test was made above 63 °C, the end of 'hot'; is the temperature right?",
                        rules.rule("careWords")));
            }
            return new CareLine(
                    About.WASHING,
                    "%s %s, at most %s.".formatted(how, warmth, degrees(celsius)),
                    evidence.washWords(test),
                    rules.rule("careWords"));
        }

        private void bleach() {
            CareEvidence.Verdict chlorine = evidence.plain(Kind.CHLORINE_BLEACH);
            CareEvidence.Verdict other = evidence.plain(Kind.OTHER_BLEACH);
            if (other.forbidden()) {
                add(About.BLEACHING, "Do not bleach.", other.test());
            } else if (other.allowed() && !chlorine.allowed()) {
                add(About.BLEACHING, "Only non-chlorine bleach, when needed.", other.test());
            } else if (chlorine.forbidden()) {
                add(About.BLEACHING, "Do not use chlorine bleach.", chlorine.test());
            } else if (other.allowed()) {
                add(About.BLEACHING, "Bleach when needed.", chlorine.test());
            }
        }

        private void dry() {
            CareEvidence.Verdict tumble = evidence.heated(Kind.TUMBLE_DRY);
            if (tumble.forbidden()) {
                add(About.DRYING, "Do not tumble dry.", tumble.test());
            } else if (tumble.allowed()) {
                add(About.DRYING, "Tumble dry" + atMost(tumble.test()) + ".", tumble.test());
            }
            said(About.DRYING, Kind.LINE_DRY, "Line dry.", "Do not line dry.");
            said(About.DRYING, Kind.FLAT_DRY, "Dry flat.", "Do not dry flat.");
        }

        private void iron() {
            CareEvidence.Verdict iron = evidence.heated(Kind.IRON);
            if (iron.forbidden()) {
                add(About.IRONING, "Do not iron.", iron.test());
            } else if (iron.allowed() && rules.ironWords() && CareEvidence.measured(iron.test())) {
                double celsius = CareEvidence.proven(iron.test());
                String word = celsius < 150 ? "Cool iron" : celsius < 200 ? "Warm iron" : "Iron";
                lines.add(new CareLine(
                        About.IRONING,
                        word + atMost(iron.test()) + ".",
                        CareEvidence.words(iron.test()),
                        rules.rule("careIron")));
            } else if (iron.allowed()) {
                add(About.IRONING, "Iron" + atMost(iron.test()) + ".", iron.test());
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
                        CareEvidence.words(evidence.wash().test()) + "; " + CareEvidence.words(dryClean.test()),
                        rules.rule("careNeeded")));
            } else {
                said(
                        About.PROFESSIONAL_CARE,
                        Kind.DRY_CLEAN,
                        word + ".",
                        "Do not %s.".formatted(word.toLowerCase(Locale.ROOT)));
            }
        }

        private void warnings() {
            String colour = rules.language().equals("en-US") ? "Color" : "Colour";
            warning(Kind.RUB, colour + " may rub off.");
            warning(Kind.WATER, "Water may mark it.");
            warning(Kind.LIGHT, "Keep out of strong light.");
        }

        private void warning(Kind kind, String text) {
            evidence.judged(kind, false).stream().findFirst().ifPresent(t -> add(About.WARNING, text, t));
        }

        private void said(About of, Kind kind, String allowed, String forbidden) {
            CareEvidence.Verdict verdict = evidence.plain(kind);
            if (verdict.way() != CareEvidence.Way.UNKNOWN) {
                add(of, verdict.allowed() ? allowed : forbidden, verdict.test());
            }
        }

        private void add(About of, String text, CareTest test) {
            lines.add(new CareLine(of, text, CareEvidence.words(test), rule));
        }

        private String atMost(CareTest test) {
            if (!CareEvidence.measured(test)) {
                return "";
            }
            double celsius = CareEvidence.proven(test);
            return ", at most " + (rules.fahrenheitFirst() ? degrees(celsius) : whole(celsius) + "\u00a0°C");
        }

        private String degrees(double celsius) {
            String first = rules.fahrenheitFirst() ? fahrenheit(celsius) : whole(celsius) + "\u00a0°C";
            String second = rules.fahrenheitFirst() ? whole(celsius) + "\u00a0°C" : fahrenheit(celsius);
            return "%s (%s)".formatted(first, second);
        }
    }

    /** Downwards: what is printed as the most is never more than was tested. The small addend undoes a unit's rounding. */
    private static String whole(double value) {
        return "%.0f".formatted(Math.floor(value + 1e-6));
    }

    private static String fahrenheit(double celsius) {
        return whole(Unit.CELSIUS.convert(celsius, Unit.FAHRENHEIT)) + "\u00a0°F";
    }
}
