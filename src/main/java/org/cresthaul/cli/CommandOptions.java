package org.cresthaul.cli;

import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.exchange.raster.HeightUnit;
import org.cresthaul.language.Catalog;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Length;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How options are spelled on the command line. */
final class CommandOptions {
    private CommandOptions() {}

    /** What a report is printed as. */
    enum Form {
        TEXT,
        JSON,
        CSV,
        SURVEY;

        @Override
        public String toString() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** "us" or "metric". */
    static final class Units implements ITypeConverter<UnitSystem> {
        @Override
        public UnitSystem convert(String text) {
            return switch (text) {
                case "us" -> UnitSystem.US_CUSTOMARY;
                case "metric" -> UnitSystem.METRIC;
                default -> throw new TypeConversionException("it is \"" + text + "\"; write us or metric");
            };
        }
    }

    /** "EPSG:2263" */
    static final class Crs implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            int code = PlaneCoordinates.code(text);
            if (code == 0) {
                throw new TypeConversionException("it is \"" + text + "\"; write a code such as EPSG:2263");
            }
            return code;
        }
    }

    /** "m", "ft" or "ftUS". */
    static final class Heights implements ITypeConverter<HeightUnit> {
        @Override
        public HeightUnit convert(String text) {
            return HeightUnit.of(text)
                    .orElseThrow(() -> new TypeConversionException("it is \"" + text + "\"; write m, ft or ftUS"));
        }
    }

    /** "en" or "es". */
    static final class Language implements ITypeConverter<Catalog> {
        @Override
        public Catalog convert(String text) {
            return Catalog.find(text)
                    .orElseThrow(() -> new TypeConversionException(
                            "it is \"" + text + "\"; write " + String.join(" or ", Catalog.names())));
        }
    }

    /** A gap to be left, from 0 to 1 m. */
    static final class Margin implements ITypeConverter<Length> {
        @Override
        public Length convert(String text) {
            try {
                Length margin = Length.parse(text);
                if (margin.meters() < 0 || margin.meters() > 1) {
                    throw new TypeConversionException("it is \"" + text + "\"; it must be between 0 m and 1 m");
                }
                return margin;
            } catch (BadQuantity e) {
                throw new TypeConversionException(e.getMessage() + " " + e.remedy());
            }
        }
    }

    /** A distance along a road, from 0 to 100 km. */
    static final class Distance implements ITypeConverter<Length> {
        @Override
        public Length convert(String text) {
            try {
                Length distance = Length.parse(text);
                if (distance.meters() < 0) {
                    throw new TypeConversionException("it is \"" + text + "\"; it must not be negative");
                }
                return distance;
            } catch (BadQuantity e) {
                throw new TypeConversionException(e.getMessage() + " " + e.remedy());
            }
        }
    }
}
