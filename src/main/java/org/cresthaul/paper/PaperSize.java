package org.cresthaul.paper;

/** Sheets a paper is printed on, upright; in points of 1/72 in. */
public enum PaperSize {
    LETTER(612, 792),
    A4(595.2756, 841.8898);

    private final double widthPt;
    private final double heightPt;

    PaperSize(double widthPt, double heightPt) {
        this.widthPt = widthPt;
        this.heightPt = heightPt;
    }

    double widthPt() {
        return widthPt;
    }

    double heightPt() {
        return heightPt;
    }

    /** "letter", "a4" */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
