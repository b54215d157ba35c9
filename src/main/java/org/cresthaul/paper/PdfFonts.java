package org.cresthaul.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The lettering of one PDF document: Barlow Semi Condensed, medium and bold, embedded. Widths are points. */
final class PdfFonts {
    private final PDFont medium;
    private final PDFont bold;
    private final Map<Integer, String> printable = new HashMap<>();

    PdfFonts(PDDocument document) throws IOException {
        medium = load(document, "/fonts/BarlowSemiCondensed-Medium.ttf");
        bold = load(document, "/fonts/BarlowSemiCondensed-Bold.ttf");
    }

    private static PDFont load(PDDocument document, String name) throws IOException {
        try (InputStream font = PdfFonts.class.getResourceAsStream(name)) {
            return PDType0Font.load(document, font, true);
        }
    }

    PDFont of(boolean isBold) {
        return isBold ? bold : medium;
    }

    /** The text with every character that the fonts do not have told by its code: "[U+4E2D]"; nothing is dropped. */
    String printable(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.append(printable.computeIfAbsent(c, this::look)));
        return shown.toString();
    }

    private String look(int codePoint) {
        String text = Character.isWhitespace(codePoint) ? " " : Character.toString(codePoint);
        try {
            bold.encode(text);
            medium.encode(text);
            return text;
        } catch (IllegalArgumentException missing) {
            return String.format(java.util.Locale.ROOT, "[U+%04X]", codePoint);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @param text printable */
    double width(String text, boolean isBold, double size) {
        try {
            return of(isBold).getStringWidth(text) / 1000 * size;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lines no wider than {@code widthPt}, broken at spaces, and within a word that is wider than that. */
    List<String> wrapped(String text, boolean isBold, double size, double widthPt) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : printable(text).strip().split(" +")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, isBold, size) <= widthPt) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (width(line, isBold, size) > widthPt) {
                int fits = fitting(line, isBold, size, widthPt);
                lines.add(line.substring(0, fits));
                line = line.substring(fits);
            }
        }
        lines.add(line);
        return lines;
    }

    /** How many characters fit, at least one whole character. */
    private int fitting(String word, boolean isBold, double size, double widthPt) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int next = word.offsetByCodePoints(end, 1);
            if (width(word.substring(0, next), isBold, size) > widthPt) {
                break;
            }
            end = next;
        }
        return end;
    }
}
