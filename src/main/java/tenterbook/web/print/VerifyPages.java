package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.documents.VerificationCode;
import tenterbook.documents.issue.Verification;
import tenterbook.exchange.ProofCheck;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;

/** Compares a certificate's code with this archive, or checks a proof file without it, and states what that shows and what it does not. */
public final class VerifyPages {
    private final Site site;

    public VerifyPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/verify", this::verify);
        routes.post("/verify", this::proof);
    }

    /**
     * The page.
     *
     * @param typed as it was asked for
     * @param code in groups of four; empty where none was asked for or it was not understood
     * @param problem why it was not understood; empty where it was
     * @param found every revision of a piece that the code fits
     * @param troubles what is wrong with the stored files of its certificates
     * @param proof a proof file that was checked; null for none
     */
    public record VerifyView(
            String typed,
            String code,
            String problem,
            List<Verification> found,
            List<String> troubles,
            @Nullable CheckedProof proof) {}

    /**
     * A proof file as it was found.
     *
     * @param findings what is wrong with it; empty where it holds
     * @param shows what it shows, if it holds
     */
    public record CheckedProof(String name, List<String> findings, List<String> shows, List<String> notShown) {}

    /** Checks a file of ‘prove’, of this archive or another; nothing of it is kept. */
    private void proof(Context ctx) throws IOException {
        UploadedFile sent = ctx.uploadedFile("proof");
        if (sent == null || sent.size() == 0) {
            ctx.status(400);
            show(ctx, new VerifyView("", "", w("verify.no-proof-file"), List.of(), List.of(), null));
            return;
        }
        Path file = Files.createTempFile("proof", ".json");
        try (InputStream content = sent.content()) {
            Files.copy(content, file, StandardCopyOption.REPLACE_EXISTING);
            ProofCheck.Result result = ProofCheck.run(file);
            show(
                    ctx,
                    new VerifyView(
                            "",
                            "",
                            "",
                            List.of(),
                            List.of(),
                            new CheckedProof(
                                    sent.filename(),
                                    result.findings().stream()
                                            .map(Object::toString)
                                            .map(line -> line.replace(
                                                    file.getFileName().toString(), sent.filename()))
                                            .toList(),
                                    result.shows().stream().map(Words::w).toList(),
                                    ProofCheck.NOT_SHOWN.stream().map(Words::w).toList())));
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private void show(Context ctx, VerifyView view) {
        Html.show(ctx, "verify", Map.of("page", site.page(ctx, w("titles.verify"), "print"), "view", view));
    }

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
            view = new VerifyView("", "", "", List.of(), List.of(), null);
        } else {
            try {
                VerificationCode code = VerificationCode.read(typed);
                List<Verification> found = Verification.of(site.archive(), code);
                view = new VerifyView(typed, code.toString(), "", found, troubles(found), null);
            } catch (IllegalArgumentException e) {
                ctx.status(400);
                view = new VerifyView(typed, "", Words.sentence(e), List.of(), List.of(), null);
            }
        }
        show(ctx, view);
    }
}
