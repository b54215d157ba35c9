package org.cresthaul.paper;

import org.cresthaul.plan.RunSheet;
import org.cresthaul.plan.Statement;

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

    public static byte[] pdf(Statement statement, PaperSize size) {
        return new PdfPaper(new StatementPaper(statement).paper(), size).bytes();
    }

    public static byte[] html(Statement statement) {
        return new HtmlPaper(new StatementPaper(statement).paper()).bytes();
    }
}
