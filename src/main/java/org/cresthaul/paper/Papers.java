package org.cresthaul.paper;

import org.cresthaul.plan.RunSheet;
import org.cresthaul.plan.Statement;
import org.cresthaul.route.Route;

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

    /** @param route the statement is about, for its map */
    public static byte[] pdf(Statement statement, Route route, PaperSize size) {
        return new PdfPaper(new StatementPaper(statement, route).paper(), size).bytes();
    }

    /** @param route likewise */
    public static byte[] html(Statement statement, Route route) {
        return new HtmlPaper(new StatementPaper(statement, route).paper()).bytes();
    }
}
