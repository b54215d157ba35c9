package org.cresthaul.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** The page on paper, read back. */
final class PrintedPage {
    /** How a print begins that says what it lacks. */
    static final String NOT_ON_IT = "Not on this print";

    private PrintedPage() {}

    static String text(byte[] pdf) throws IOException {
        return String.join(" ", pages(pdf));
    }

    /** Each sheet's text, its spaces and line ends as single spaces. */
    static List<String> pages(byte[] pdf) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("\\s+", " "));
            }
        }
        return pages;
    }
}
