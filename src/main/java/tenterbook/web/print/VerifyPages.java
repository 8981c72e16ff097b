package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import tenterbook.documents.VerificationCode;
import tenterbook.documents.issue.Verification;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;

/** Compares a certificate's code with this archive, and states what that shows and what it does not. */
public final class VerifyPages {
    private final Site site;

    public VerifyPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/verify", this::verify);
    }

    /**
     * The page.
     *
     * @param typed as it was asked for
     * @param code in groups of four; empty where none was asked for or it was not understood
     * @param problem why it was not understood; empty where it was
     * @param found every revision of a piece that the code fits
     * @param troubles what is wrong with the stored files of its certificates
     */
    public record VerifyView(
            String typed, String code, String problem, List<Verification> found, List<String> troubles) {}

    private List<String> troubles(List<Verification> found) {
        return found.stream()
                .flatMap(each -> each.certificates().stream())
                .distinct()
                .flatMap(paper -> site.archive().papers().trouble(paper).stream())
                .map(Words::w)
                .toList();
    }

    private void verify(Context ctx) {
        String typed =
                ctx.queryParam("code") == null ? "" : ctx.queryParam("code").strip();
        VerifyView view;
        if (typed.isEmpty()) {
            view = new VerifyView("", "", "", List.of(), List.of());
        } else {
            try {
                VerificationCode code = VerificationCode.read(typed);
                List<Verification> found = Verification.of(site.archive(), code);
                view = new VerifyView(typed, code.toString(), "", found, troubles(found));
            } catch (IllegalArgumentException e) {
                ctx.status(400);
                view = new VerifyView(typed, "", Words.sentence(e), List.of(), List.of());
            }
        }
        Html.show(ctx, "verify", Map.of("page", site.page(ctx, w("titles.verify"), "print"), "view", view));
    }
}
