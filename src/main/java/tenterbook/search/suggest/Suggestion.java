package tenterbook.search.suggest;

/**
 * A suggestion for what was typed.
 *
 * @param kind one of {@code number}, {@code title}, {@code board}, {@code dye}, {@code cloth}, {@code fault}, {@code
 *     place}
 * @param text as a person reads it, as in 'B02 Heron weir'
 * @param value what to put in the parameter of that kind; for a title or place, words for {@code q}
 * @param pieces how many pieces have it
 */
public record Suggestion(String kind, String text, String value, int pieces) {}
