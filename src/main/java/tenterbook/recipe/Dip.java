package tenterbook.recipe;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Refusal;

/**
 * One dip, timed.
 *
 * @param in when the clamped bundle went under, local time
 * @param out when it came up, local time; not before {@code in}
 */
public record Dip(@Nullable LocalDateTime in, @Nullable LocalDateTime out) {
    public Dip {
        if (in != null && out != null && out.isBefore(in)) {
            throw Refusal.of("recipe.dip-backwards", "from", in, "to", out);
        }
    }
}
