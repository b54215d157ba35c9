package org.cresthaul.paper;

import java.util.Optional;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.sheet.Statement;

/** Run sheets and statements as files. Equal papers are equal bytes. */
public final class Papers {
    private Papers() {}

    /** @param pictures of the same plan */
    public static byte[] pdf(RunSheet sheet, SheetPictures pictures, PaperSize size) {
        return new PdfPaper(new RunSheetPaper(sheet, pictures).paper(), size).bytes();
    }

    /** One file that needs nothing else. */
    public static byte[] html(RunSheet sheet, SheetPictures pictures) {
        return new HtmlPaper(new RunSheetPaper(sheet, pictures).paper()).bytes();
    }

    /**
     * @param route the statement is about, for its map
     * @param map to draw beneath it, where there is one
     */
    public static byte[] pdf(Statement statement, Route route, Optional<CreditedMap> map, PaperSize size) {
        return new PdfPaper(new StatementPaper(statement, route, map).paper(), size).bytes();
    }

    /** With {@code route} and {@code map} likewise. */
    public static byte[] html(Statement statement, Route route, Optional<CreditedMap> map) {
        return new HtmlPaper(new StatementPaper(statement, route, map).paper()).bytes();
    }
}
