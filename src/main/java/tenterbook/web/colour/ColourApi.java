package tenterbook.web.colour;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.Srgb;
import tenterbook.words.Refusal;

/** Colour arithmetic over HTTP. CIELAB is D65, 2° observer throughout. */
public final class ColourApi {
    public void routes(RoutesConfig routes) {
        routes.get("/api/colour/lab", this::lab);
        routes.get("/api/colour/difference", this::difference);
    }

    private static String needed(Context ctx, String name, String example) {
        return Optional.ofNullable(ctx.queryParam(name))
                .filter(text -> !text.isBlank())
                .orElseThrow(() -> Refusal.of("api.parameter-missing", "name", name, "example", example));
    }

    private void lab(Context ctx) {
        Srgb srgb = Srgb.parse(needed(ctx, "srgb", "srgb=3a6a8f"));
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("srgb", srgb.hex());
        answer.put("lab", srgb.lab());
        answer.put("words", ColourWords.of(srgb.lab()));
        answer.put("white", "D65");
        answer.put("observer", "2°");
        ctx.json(answer);
    }

    /** The two colours are called ‘from’ and ‘to’; ‘first’ and ‘second’ are understood as well. */
    private void difference(Context ctx) {
        Lab from = Lab.parse(needed(ctx, ctx.queryParam("first") == null ? "from" : "first", "from=48,-5,-24"));
        Lab to = Lab.parse(needed(ctx, ctx.queryParam("second") == null ? "to" : "second", "to=36,-3,-26"));
        double difference = Ciede2000.difference(from, to);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("from", from);
        answer.put("to", to);
        answer.put("formula", "CIEDE2000, kL = kC = kH = 1");
        answer.put("difference", difference);
        answer.put("words", DifferenceWords.of(difference).inEnglish());
        ctx.json(answer);
    }
}
