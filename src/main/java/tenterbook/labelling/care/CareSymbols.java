package tenterbook.labelling.care;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.RuleTable;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.words.Message;

/**
 * The symbols supported by evidence. A symbol that allows more than was tested is not drawn, so a hand wash tested at 30 °C has
 * none: the symbol allows 40 °C.
 *
 * @param marks in the order of ISO 3758, each with its evidence
 * @param questions on what is missing, the trade mark, and the market's rules of symbols
 * @param gaps the rows without a symbol, each with why, as in 'bleaching: no fitting test'
 */
public record CareSymbols(List<Mark> marks, List<Question> questions, List<Message> gaps) {
    /** The caution to show where symbols are chosen. */
    public static final Message CAUTION = Message.of("care.symbols-caution");

    private static final Pattern VERY_MILD =
            Pattern.compile("\\b(very\\s+gentle|very\\s+mild|wool\\s+programme|hand\\s+programme)\\b");
    private static final Pattern MILD = Pattern.compile("\\b(gentle|mild|delicate|delicates)\\b");

    /** A symbol with its evidence. */
    public record Mark(CareSymbol symbol, String evidence) {}

    public CareSymbols {
        marks = List.copyOf(marks);
        questions = List.copyOf(questions);
        gaps = List.copyOf(gaps);
    }

    public static CareSymbols of(CareCase about, Market market) {
        RuleTable rules = market.rules();
        CareEvidence evidence = new CareEvidence(about, rules);
        Choosing choosing = new Choosing(evidence, rules);
        return choosing.symbols();
    }

    private static final class Choosing {
        private final CareEvidence evidence;
        private final RuleTable rules;
        private final List<Mark> marks = new ArrayList<>();
        private final Map<CareLine.About, Message> why = new EnumMap<>(CareLine.About.class);
        private final List<Question> questions = new ArrayList<>();
        private final List<Message> gaps = new ArrayList<>();

        Choosing(CareEvidence evidence, RuleTable rules) {
            this.evidence = evidence;
            this.rules = rules;
        }

        CareSymbols symbols() {
            wash(evidence.wash());
            bleach();
            dry();
            iron(evidence.heated(Kind.IRON));
            dryClean(evidence.plain(Kind.DRY_CLEAN));
            missing();
            if (!marks.isEmpty()) {
                questions.add(new Question(Message.of("care.symbols.compared"), rules.rule("careSymbolShapes")));
                questions.add(new Question(Message.of("care.symbols.leave"), rules.rule("careSymbolMarks")));
            }
            if (!rules.symbolsNote().isEmpty()) {
                questions.add(new Question(
                        Message.of("care.symbols.wanted", "note", rules.symbolsNote()), rules.rule("careSymbols")));
            }
            return new CareSymbols(marks, questions, gaps);
        }

        private void wash(CareEvidence.Verdict wash) {
            if (wash.forbidden()) {
                mark(CareSymbol.NO_WASH, wash.test());
            } else if (wash.allowed() && !CareEvidence.measured(wash.test())) {
                why.put(CareLine.About.WASHING, Message.of("care.gap.no-temperature"));
            } else if (wash.allowed() && wash.test().kind() == Kind.HAND_WASH) {
                if (evidence.washCelsius(wash.test())
                        >= rules.rule("careSymbolShapes").figure(0) - 1e-6) {
                    mark(CareSymbol.HAND_WASH, wash.test());
                } else {
                    why.put(
                            CareLine.About.WASHING,
                            Message.of(
                                    "care.gap.hand-wash",
                                    "temperature",
                                    wash.test().temperature()));
                }
            } else if (wash.allowed()) {
                machine(wash.test());
            }
        }

        private void machine(CareTest test) {
            double celsius = evidence.washCelsius(test);
            String how = (test.method() + " " + test.result()).toLowerCase(Locale.ROOT);
            String mild = MILD.matcher(how).find() ? "_MILD" : "";
            String bars = VERY_MILD.matcher(how).find() ? "_VERY_MILD" : mild;
            Optional<String> degrees = Stream.of(95, 70, 60, 50, 40, 30)
                    .filter(d -> d <= celsius + 1e-6 && (bars.isEmpty() || d <= 40))
                    .findFirst()
                    .map(d -> "WASH_" + d + bars);
            if (degrees.isPresent()) {
                mark(CareSymbol.valueOf(degrees.get()), test);
            } else {
                why.put(CareLine.About.WASHING, Message.of("care.gap.too-cool-a-wash"));
            }
        }

        private void bleach() {
            CareEvidence.Verdict chlorine = evidence.plain(Kind.CHLORINE_BLEACH);
            CareEvidence.Verdict other = evidence.plain(Kind.OTHER_BLEACH);
            if (other.forbidden()) {
                mark(CareSymbol.NO_BLEACH, other.test());
            } else if (other.allowed() && chlorine.allowed()) {
                mark(CareSymbol.BLEACH, chlorine.test());
            } else if (other.allowed()) {
                mark(CareSymbol.OXYGEN_BLEACH, other.test());
            }
        }

        private void dry() {
            CareEvidence.Verdict tumble = evidence.heated(Kind.TUMBLE_DRY);
            if (tumble.forbidden()) {
                mark(CareSymbol.NO_TUMBLE_DRY, tumble.test());
            } else if (tumble.allowed() && CareEvidence.measured(tumble.test())) {
                double celsius = CareEvidence.proven(tumble.test());
                if (celsius >= 80 - 1e-6) {
                    mark(CareSymbol.TUMBLE_DRY, tumble.test());
                } else if (celsius >= 60 - 1e-6) {
                    mark(CareSymbol.TUMBLE_DRY_LOW, tumble.test());
                }
            }
            if (evidence.plain(Kind.LINE_DRY).allowed()) {
                mark(CareSymbol.LINE_DRY, evidence.plain(Kind.LINE_DRY).test());
            } else if (evidence.plain(Kind.FLAT_DRY).allowed()) {
                mark(CareSymbol.FLAT_DRY, evidence.plain(Kind.FLAT_DRY).test());
            }
        }

        private void iron(CareEvidence.Verdict iron) {
            if (iron.forbidden()) {
                mark(CareSymbol.NO_IRON, iron.test());
            } else if (iron.allowed() && CareEvidence.measured(iron.test())) {
                double celsius = CareEvidence.proven(iron.test());
                Stream.of(200, 150, 110)
                        .filter(d -> d <= celsius + 1e-6)
                        .findFirst()
                        .ifPresentOrElse(
                                d -> mark(CareSymbol.valueOf("IRON_" + d), iron.test()),
                                () -> why.put(CareLine.About.IRONING, Message.of("care.gap.too-cool-an-iron")));
            } else if (iron.allowed()) {
                why.put(CareLine.About.IRONING, Message.of("care.gap.no-temperature"));
            }
        }

        private void dryClean(CareEvidence.Verdict dryClean) {
            if (dryClean.forbidden()) {
                mark(CareSymbol.NO_DRY_CLEAN, dryClean.test());
            } else if (dryClean.allowed()) {
                CareTest test = dryClean.test();
                Message gap = Solvents.named(test)
                        ? Message.of("care.gap.solvent-unclear", "found", (test.method() + " " + test.result()).strip())
                        : Message.of("care.gap.no-solvent");
                Solvents.symbol(test)
                        .ifPresentOrElse(
                                symbol -> mark(symbol, test), () -> why.put(CareLine.About.PROFESSIONAL_CARE, gap));
            }
        }

        private void mark(CareSymbol symbol, CareTest test) {
            marks.add(new Mark(symbol, CareEvidence.words(test).inEnglish()));
        }

        private void missing() {
            Stream.of(CareLine.About.values())
                    .filter(a -> a != CareLine.About.WARNING)
                    .filter(a -> marks.stream().noneMatch(m -> m.symbol().about() == a))
                    .map(a -> Message.of(
                            "care.gap", "treatment", a, "why", why.getOrDefault(a, Message.of("care.gap.no-test"))))
                    .forEach(gaps::add);
            if (!gaps.isEmpty()) {
                questions.add(new Question(
                        Message.of(
                                "care.symbols.gaps",
                                "gaps",
                                gaps.stream()
                                        .reduce((one, other) -> Message.of("care.gaps", "one", one, "other", other))
                                        .orElseThrow()),
                        rules.rule("careSymbols")));
            }
        }
    }
}
