package tenterbook.web.condition;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import tenterbook.imaging.Photo;
import tenterbook.measure.Digest;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.PhotoMark;
import tenterbook.web.form.Form;

/**
 * A photograph of an examination with the numbered marks on it.
 *
 * @param label as in 'front'; where several show the same side, with its place, as in 'detail 2'
 * @param taken what the camera wrote, or empty
 * @param viewable whether a picture of it can be shown
 * @param width pixels, upright; null where not known, as {@code height}
 */
public record MarkedPhotograph(
        String digest,
        String label,
        String caption,
        String taken,
        boolean viewable,
        Integer width,
        Integer height,
        List<Mark> marks) {
    /**
     * A mark as drawn: places in percent of the picture, the disc with the number in pixels beside them.
     *
     * @param width empty for a point
     */
    public record Mark(int number, String left, String top, String width, String height, int discAcross, int discDown) {
        static Mark of(int number, PhotoMark mark) {
            if (mark.area()) {
                return new Mark(
                        number,
                        percent(mark.left()),
                        percent(mark.top()),
                        percent(mark.right() - mark.left()),
                        percent(mark.bottom() - mark.top()),
                        mark.left() < 0.04 ? 14 : 0,
                        mark.top() < 0.04 ? 14 : 0);
            }
            return new Mark(
                    number,
                    percent(mark.left()),
                    percent(mark.top()),
                    "",
                    "",
                    mark.left() > 0.88 ? -18 : 18,
                    mark.top() < 0.12 ? 18 : -18);
        }

        private static String percent(double fraction) {
            return String.format(Locale.ROOT, "%.3f%%", 100 * fraction);
        }

        public boolean area() {
            return !width.isEmpty();
        }
    }

    /** A photograph without its marks. */
    private record Unmarked(String digest, String view, String caption) {}

    static List<MarkedPhotograph> of(Examination examination, Function<Digest, Optional<Photo>> files) {
        List<Unmarked> photos = new ArrayList<>();
        for (ExaminedPhoto photo : examination.photos()) {
            photos.add(new Unmarked(photo.photo().hex(), photo.view() == null ? "" : w(photo.view()), photo.caption()));
        }
        return plates(photos, files, digest -> {
            List<Mark> marks = new ArrayList<>();
            for (Observation observation : examination.observations()) {
                observation.marks().stream()
                        .filter(mark -> mark.photo().hex().equals(digest))
                        .forEach(mark -> marks.add(Mark.of(observation.number(), mark)));
            }
            return marks;
        });
    }

    /** From a form; marks that cannot be read yet are not drawn. */
    static List<MarkedPhotograph> of(Form form, List<NumberedRow> rows, Function<Digest, Optional<Photo>> files) {
        List<Unmarked> photos = new ArrayList<>();
        for (Form row : form.rows("photos")) {
            if (row.has("photo") && !row.checked("leaveOut")) {
                photos.add(new Unmarked(row.text("photo"), row.text("view"), row.text("caption")));
            }
        }
        return plates(photos, files, digest -> {
            List<Mark> marks = new ArrayList<>();
            for (NumberedRow observation : rows) {
                for (Form mark : observation.row().rows("marks")) {
                    if (mark.text("photo").equals(digest)) {
                        read(digest, mark.text("at")).ifPresent(read -> marks.add(Mark.of(observation.number(), read)));
                    }
                }
            }
            return marks;
        });
    }

    /** The row of an observation and the number that it has or will have. */
    public record NumberedRow(Form row, int number) {}

    /** @param next number of the next new observation */
    static List<NumberedRow> numbered(Form form, int next) {
        List<Form> rows = form.rows("observations");
        int free = Math.max(
                next,
                1
                        + rows.stream()
                                .map(row -> row.value("number"))
                                .filter(text -> text.matches("\\d{1,3}"))
                                .mapToInt(Integer::parseInt)
                                .max()
                                .orElse(0));
        List<NumberedRow> numbered = new ArrayList<>();
        for (Form row : rows) {
            String typed = row.value("number");
            boolean old = typed.matches("\\d{1,3}");
            numbered.add(new NumberedRow(row, old ? Integer.parseInt(typed) : free));
            free += old ? 0 : 1;
        }
        return numbered;
    }

    private static Optional<PhotoMark> read(String digest, String at) {
        try {
            return at.isEmpty() ? Optional.empty() : Optional.of(PhotoMark.read(new Digest(digest), at));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static List<MarkedPhotograph> plates(
            List<Unmarked> photos, Function<Digest, Optional<Photo>> files, Function<String, List<Mark>> marks) {
        List<MarkedPhotograph> plates = new ArrayList<>();
        for (int i = 0; i < photos.size(); i++) {
            Unmarked of = photos.get(i);
            String view = of.view().isEmpty() ? "photograph" : of.view();
            long same = photos.stream()
                    .filter(other -> other.view().equals(of.view()))
                    .count();
            long before = photos.subList(0, i).stream()
                    .filter(other -> other.view().equals(of.view()))
                    .count();
            Optional<Photo> file = digest(of.digest()).flatMap(files);
            plates.add(new MarkedPhotograph(
                    of.digest(),
                    same > 1 ? view + " " + (before + 1) : view,
                    of.caption(),
                    file.map(Photo::taken).map(MarkedPhotograph::day).orElse(""),
                    file.map(Photo::viewable).orElse(false),
                    file.map(Photo::width).orElse(null),
                    file.map(Photo::height).orElse(null),
                    marks.apply(of.digest())));
        }
        return plates;
    }

    private static Optional<Digest> digest(String hex) {
        try {
            return Optional.of(new Digest(hex));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The day of '2024-03-05T10:15:00+01:00'. */
    private static String day(String taken) {
        return taken.length() < 10 ? taken : taken.substring(0, 10);
    }

    public String alt() {
        return caption.isEmpty() ? label : label + ": " + caption;
    }
}
