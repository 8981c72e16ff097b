package tenterbook.web.server;

import io.javalin.config.RoutesConfig;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.web.Site;
import tenterbook.web.clamping.BoardPages;
import tenterbook.web.clamping.ClampingPages;
import tenterbook.web.clamping.DipPages;
import tenterbook.web.clamping.MaterialPages;
import tenterbook.web.colour.ColourApi;
import tenterbook.web.colour.ColourPages;
import tenterbook.web.condition.ConditionApi;
import tenterbook.web.condition.ConditionPages;
import tenterbook.web.condition.ConditionReportPages;
import tenterbook.web.condition.ExaminationPages;
import tenterbook.web.photo.ArrivalPages;
import tenterbook.web.photo.CalibrationPages;
import tenterbook.web.photo.ClothPages;
import tenterbook.web.photo.FadingPages;
import tenterbook.web.photo.LayerPages;
import tenterbook.web.photo.PhotoColourApi;
import tenterbook.web.photo.PhotoMeasuring;
import tenterbook.web.photo.PhotoPages;
import tenterbook.web.photo.WaitingPages;
import tenterbook.web.piece.PieceApi;
import tenterbook.web.piece.PieceListPages;
import tenterbook.web.piece.PiecePages;
import tenterbook.web.print.DocumentPages;
import tenterbook.web.print.IssuedDocumentPages;
import tenterbook.web.print.IssuedPages;
import tenterbook.web.print.LabelApi;
import tenterbook.web.print.LabelPrinting;
import tenterbook.web.print.PrintPages;
import tenterbook.web.print.SheetPages;
import tenterbook.web.print.VerifyPages;
import tenterbook.web.record.DraftPages;
import tenterbook.web.record.HistoryPages;
import tenterbook.web.record.RecordApis;
import tenterbook.web.studio.ErasurePages;
import tenterbook.web.studio.OwnWordsPages;
import tenterbook.web.studio.PeoplePages;
import tenterbook.web.studio.StudioPages;
import tenterbook.web.studio.WorkPages;

/** All pages and interfaces, each with its routes. */
final class Pages {
    private Pages() {}

    static void routes(RoutesConfig routes, Site site) {
        PhotoRegistration photos = new PhotoRegistration(site.archive(), site.intake());
        new PieceListPages(site).routes(routes);
        new PiecePages(site, photos).routes(routes);
        PhotoMeasuring measuring = new PhotoMeasuring(site);
        PhotoPages photoPages = new PhotoPages(site, photos, measuring);
        photoPages.routes(routes);
        new ArrivalPages(site).routes(routes);
        new WaitingPages(site).routes(routes);
        new CalibrationPages(site, measuring, photoPages).routes(routes);
        new ClothPages(site, photoPages).routes(routes);
        new FadingPages(site, measuring).routes(routes);
        new LayerPages(site, measuring).routes(routes);
        new ColourPages(site).routes(routes);
        new DipPages(site).routes(routes);
        new BoardPages(site).routes(routes);
        new ClampingPages(site).routes(routes);
        new MaterialPages(site).routes(routes);
        new PeoplePages(site).routes(routes);
        new ErasurePages(site).routes(routes);
        new ConditionPages(site, photos).routes(routes);
        new ExaminationPages(site, photos).routes(routes);
        new ConditionReportPages(site).routes(routes);
        new PrintPages(site).routes(routes);
        new LabelPrinting(site).routes(routes);
        new DocumentPages(site).routes(routes);
        new IssuedDocumentPages(site).routes(routes);
        new VerifyPages(site).routes(routes);
        new IssuedPages(site).routes(routes);
        new SheetPages(site).routes(routes);
        new StudioPages(site).routes(routes);
        new OwnWordsPages(site).routes(routes);
        new HistoryPages(site).routes(routes);
        new WorkPages(site).routes(routes);
        new DraftPages(site).routes(routes);
        new PieceApi(site, photos).routes(routes);
        RecordApis.routes(routes, site);
        new LabelApi(site).routes(routes);
        new ConditionApi(site).routes(routes);
        new ColourApi().routes(routes);
        new PhotoColourApi(site).routes(routes);
    }
}
