package tenterbook.label;

/** What a label is for. */
public enum LabelKind {
    HANG_TAG("hang tag", "tag 1", 55, 90, true),
    CARE_LABEL("care label", "care 1", 30, 60, true),
    EXHIBITION_LABEL("exhibition label", "exhibition 1", 150, 100, false);

    private final String word;
    private final String template;
    private final double widthMm;
    private final double heightMm;
    private final boolean statesFibres;

    LabelKind(String word, String template, double widthMm, double heightMm, boolean statesFibres) {
        this.word = word;
        this.template = template;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
        this.statesFibres = statesFibres;
    }

    /** The version of its words and layout, kept with each label issued. */
    public String template() {
        return template;
    }

    /** Usual width, in millimetres. */
    public double widthMm() {
        return widthMm;
    }

    /** Usual height, in millimetres. */
    public double heightMm() {
        return heightMm;
    }

    /** Whether the rules of fibre content bear on it; one that does can be blocked. */
    public boolean statesFibres() {
        return statesFibres;
    }

    @Override
    public String toString() {
        return word;
    }
}
