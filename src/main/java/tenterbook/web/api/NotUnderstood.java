package tenterbook.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.List;
import java.util.stream.Collectors;

/** Turns what the JSON library says into a sentence for the person whose program sent it. */
final class NotUnderstood {
    private NotUnderstood() {}

    static IllegalArgumentException because(JsonProcessingException e) {
        return because("piece", e);
    }

    /** @param what was sent, as in 'piece' */
    static IllegalArgumentException because(String what, JsonProcessingException e) {
        return new IllegalArgumentException(
                "The %s was not understood: %s Nothing was changed.".formatted(what, reason(e)), e);
    }

    private static String reason(JsonProcessingException e) {
        if (e instanceof UnrecognizedPropertyException unknown) {
            return "‘%s’ is no field there. Expected any of %s."
                    .formatted(
                            path(unknown),
                            unknown.getKnownPropertyIds().stream()
                                    .map(String::valueOf)
                                    .sorted()
                                    .toList());
        }
        if (e instanceof JsonMappingException mapping) {
            if (mapping instanceof InvalidFormatException format
                    && format.getTargetType() != null
                    && format.getTargetType().isEnum()) {
                return "the field ‘%s’ expects one of %s; found “%s”."
                        .formatted(
                                path(mapping), List.of(format.getTargetType().getEnumConstants()), format.getValue());
            }
            for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
                if (cause instanceof IllegalArgumentException refused) {
                    return "the field ‘%s’: %s".formatted(path(mapping), refused.getMessage());
                }
            }
            if (mapping.getPath().isEmpty()) {
                return "it is no single JSON value with each field once.";
            }
            return "the field ‘%s’ holds something that does not fit there.".formatted(path(mapping));
        }
        return "it is no JSON (%s)."
                .formatted(
                        e.getLocation() == null
                                ? "nothing could be read"
                                : "line %d, column %d"
                                        .formatted(
                                                e.getLocation().getLineNr(),
                                                e.getLocation().getColumnNr()));
    }

    /** As in {@code photos.0.role}. */
    private static String path(JsonMappingException e) {
        return e.getPath().stream()
                .map(step -> step.getFieldName() != null ? step.getFieldName() : Integer.toString(step.getIndex()))
                .collect(Collectors.joining("."));
    }
}
