package tenterbook.words;

/** What a person entered or asked for is refused, with a sentence that states why. */
public class Refusal extends IllegalArgumentException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    public Refusal(Written explanation) {
        super(explanation.inEnglish());
        this.explanation = explanation;
    }

    public Refusal(Written explanation, Throwable cause) {
        super(explanation.inEnglish(), cause);
        this.explanation = explanation;
    }

    /** @see Message#of */
    public static Refusal of(String key, Object... namesAndValues) {
        return new Refusal(Message.of(key, namesAndValues));
    }

    @Override
    public Written explanation() {
        return explanation == null ? conventions -> getMessage() : explanation;
    }
}
