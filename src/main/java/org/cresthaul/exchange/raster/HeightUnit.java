package org.cresthaul.exchange.raster;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.cresthaul.units.Worded;

/** What the heights of a raster are counted in. */
public enum HeightUnit implements Worded {
    METER("m", 1),
    FOOT("ft", 0.3048),
    /** As it was defined in 1893: 1200/3937 m. */
    SURVEY_FOOT("ftUS", 1200.0 / 3937);

    /** In either spelling. */
    private static final Pattern METERS = Pattern.compile("(?i)m|met(?:er|re)s?");

    private final String word;
    private final double meters;

    HeightUnit(String word, double meters) {
        this.word = word;
        this.meters = meters;
    }

    @Override
    public String word() {
        return word;
    }

    double meters() {
        return meters;
    }

    /** By its word, or by one that other programs write. */
    public static Optional<HeightUnit> of(String text) {
        if (METERS.matcher(text.strip()).matches()) {
            return Optional.of(METER);
        }
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "ft", "foot", "feet", "international foot" -> Optional.of(FOOT);
            case "ftus", "us-ft", "us survey foot", "us_survey_foot", "us survey feet" -> Optional.of(SURVEY_FOOT);
            default -> Optional.empty();
        };
    }

    /** By its code in the EPSG dataset, which GeoTIFF uses. */
    static Optional<HeightUnit> ofCode(int code) {
        return switch (code) {
            case 9001 -> Optional.of(METER);
            case 9002 -> Optional.of(FOOT);
            case 9003 -> Optional.of(SURVEY_FOOT);
            default -> Optional.empty();
        };
    }

    /** By how long it is. */
    static Optional<HeightUnit> ofMeters(double meters) {
        for (HeightUnit unit : values()) {
            // The two feet differ by two in a million.
            if (Math.abs(unit.meters / meters - 1) < 1e-7) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
