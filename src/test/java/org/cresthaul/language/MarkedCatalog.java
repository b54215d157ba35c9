package org.cresthaul.language;

/** Spanish with every text between marks: what stands outside of them does not come from the catalog. */
public final class MarkedCatalog {
    public static final String OPEN = "⟦";
    public static final String CLOSE = "⟧";
    public static final Catalog SPANISH = Catalog.SPANISH.changed(text -> text.isBlank() ? text : OPEN + text + CLOSE);

    private MarkedCatalog() {}
}
