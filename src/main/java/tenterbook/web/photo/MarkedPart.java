package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.palette.Region;
import tenterbook.web.form.Form;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A part of a picture as a form gives it. */
final class MarkedPart {
    private MarkedPart() {}

    /** From the fields left, top, right and bottom, in percent; null with a problem beside the field where one is unreadable. */
    static Region rectangle(Form typed) {
        double[] box = new double[4];
        String[] fields = {"left", "top", "right", "bottom"};
        for (int i = 0; i < 4; i++) {
            String text = typed.text(fields[i]);
            if (text.matches("\\d{1,3}([.,]\\d{1,9})?") && percent(text) <= 1) {
                box[i] = percent(text);
            } else {
                typed.problem(fields[i], w("measuring.no-part-of-picture", "found", text, "field", fields[i]));
            }
        }
        return typed.hasProblems()
                ? null
                : Region.rectangle(
                        Math.min(box[0], box[2]),
                        Math.min(box[1], box[3]),
                        Math.max(box[0], box[2]),
                        Math.max(box[1], box[3]));
    }

    private static double percent(String text) {
        return Double.parseDouble(text.replace(',', '.')) / 100;
    }

    /** A part drawn freely: at least three corners in percent, as in '10,10 40,12 30,50'. */
    static Region drawn(String text) {
        List<Region.Corner> corners = new ArrayList<>();
        for (String pair : text.split("[\\s;]+")) {
            String[] sides = pair.split(",");
            try {
                corners.add(new Region.Corner(bound(sides[0]), bound(sides[1])));
            } catch (RuntimeException e) {
                throw new Refusal(Message.of("measuring.outline-unreadable", "found", pair), e);
            }
        }
        return new Region(corners);
    }

    private static double bound(String percent) {
        return Math.min(1, Math.max(0, Double.parseDouble(percent) / 100));
    }
}
