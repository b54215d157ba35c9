package org.cresthaul.paper;

import java.util.Locale;

/**
 * The inks of the papers: those of the page in the browser, on white, so that they hold in sunlight and in one color.
 */
enum Ink {
    NONE(-1),
    LINE(0x17232f),
    SOFT(0x3d4954),
    HAIR(0xa9aeb0),
    GUIDE(0x0a559c),
    CONTACT(0xad1f1b),
    EARTH(0xe9e5d8),
    STEEL(0xdfe4e8),
    LOAD(0xf0e7cf),
    TIRE(0x5b6670),
    SHADE(0xf1f0ea),
    WOODS(0xe9f0e4),
    WATER(0xd3e3ef),
    ROAD(0xc4c4c4),
    RAIL(0x8a8a8a),
    PAPER(0xffffff);

    private final int rgb;

    Ink(int rgb) {
        this.rgb = rgb;
    }

    boolean isNone() {
        return rgb < 0;
    }

    float red() {
        return (rgb >> 16 & 255) / 255f;
    }

    float green() {
        return (rgb >> 8 & 255) / 255f;
    }

    float blue() {
        return (rgb & 255) / 255f;
    }

    /** "#17232f", "none" */
    String css() {
        return isNone() ? "none" : String.format(Locale.ROOT, "#%06x", rgb);
    }
}
