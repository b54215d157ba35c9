package org.cresthaul.exchange.crs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.sis.metadata.iso.extent.DefaultGeographicBoundingBox;
import org.apache.sis.referencing.CRS;
import org.apache.sis.referencing.CommonCRS;
import org.apache.sis.referencing.crs.AbstractCRS;
import org.apache.sis.referencing.cs.AxesConvention;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.opengis.metadata.extent.GeographicBoundingBox;
import org.opengis.referencing.NoSuchAuthorityCodeException;
import org.opengis.referencing.crs.CoordinateReferenceSystem;
import org.opengis.referencing.crs.SingleCRS;
import org.opengis.referencing.cs.AxisDirection;
import org.opengis.referencing.cs.CoordinateSystem;
import org.opengis.referencing.operation.ConcatenatedOperation;
import org.opengis.referencing.operation.CoordinateOperation;
import org.opengis.referencing.operation.MathTransform;
import org.opengis.referencing.operation.TransformException;
import org.opengis.referencing.operation.Transformation;
import org.opengis.util.FactoryException;

/**
 * Coordinates of the EPSG dataset, turned into longitude and latitude on WGS 84. The first number is always counted to
 * the east and the second to the north, in the system's own unit, as files of points have them. Not for sharing.
 */
public final class PlaneCoordinates {
    /** A transformation that is worse is refused, meters: a lane is narrower. */
    private static final double WORST_M = 5;
    /** How far beyond where a system is used a position may lie, degrees. */
    private static final double BEYOND_DEG = 0.5;

    /** No place on earth has a larger number, in any unit of a map. */
    private static final double FARTHEST = 1e9;

    private static final Pattern CODE = Pattern.compile("(?i)(?:urn:ogc:def:crs:)?EPSG:(?:[0-9.]*:)?(\\d{1,7})");
    /** Held, so that its level stays: the library reports every optional file that it lacks. */
    private static final Logger QUIET = Logger.getLogger("org.apache.sis");

    private final int code;
    private final CoordinateReferenceSystem system;
    private final GeographicBoundingBox used;
    private CoordinateOperation operation;
    private MathTransform transform;
    private MathTransform inverse;
    private double accuracyM;

    static {
        QUIET.setLevel(Level.OFF);
        // The database that holds the dataset would write a log beside whatever folder the program was started in.
        System.setProperty("derby.stream.error.method", "java.io.OutputStream.nullOutputStream");
    }

    private PlaneCoordinates(int code, CoordinateReferenceSystem system, GeographicBoundingBox used) {
        this.code = code;
        this.system = system;
        this.used = used;
    }

    /** The number in "EPSG:2263" or "urn:ogc:def:crs:EPSG::2263"; 0 where the text is none of them. */
    public static int code(String text) {
        Matcher matcher = CODE.matcher(text.strip());
        return matcher.matches() ? Integer.parseInt(matcher.group(1)) : 0;
    }

    /** @throws InputRejected when there is no such system, or it is none of the road's surface */
    public static PlaneCoordinates of(int code) throws InputRejected {
        try {
            SingleCRS horizontal = CRS.getHorizontalComponent(CRS.forCode("EPSG:" + code));
            if (horizontal == null) {
                throw unusable(code);
            }
            CoordinateReferenceSystem system =
                    AbstractCRS.castOrCopy(horizontal).forConvention(AxesConvention.RIGHT_HANDED);
            CoordinateSystem axes = system.getCoordinateSystem();
            GeographicBoundingBox used = CRS.getGeographicBoundingBox(horizontal);
            if (axes.getDimension() != 2
                    || axes.getAxis(0).getDirection() != AxisDirection.EAST
                    || axes.getAxis(1).getDirection() != AxisDirection.NORTH
                    || used == null) {
                throw unusable(code);
            }
            return new PlaneCoordinates(code, system, used);
        } catch (NoSuchAuthorityCodeException e) {
            throw refused(
                    "unknown-crs",
                    "There are no coordinates EPSG:" + code + ".",
                    "Look the code up where it came from.");
        } catch (FactoryException e) {
            throw unusable(code);
        }
    }

    /**
     * A position; null where the numbers are none there.
     *
     * @throws InputRejected when no transformation is good enough
     */
    public LonLat at(double east, double north) throws InputRejected {
        if (!(Math.abs(east) <= FARTHEST && Math.abs(north) <= FARTHEST)) {
            return null;
        }
        try {
            if (transform == null) {
                find(east, north);
            }
            double[] at = {east, north};
            transform.transform(at, 0, at, 0, 1);
            return isUsedAt(at[0], at[1]) && Math.abs(at[1]) <= LonLat.MOST_LAT_DEG ? new LonLat(at[0], at[1]) : null;
        } catch (TransformException e) {
            return null;
        }
    }

    /** The other way: east and north of a place; null where they do not reach, or before any position was asked for. */
    public double[] from(LonLat place) {
        if (transform == null || !isUsedAt(place.lonDeg(), place.latDeg())) {
            return null;
        }
        try {
            if (inverse == null) {
                inverse = transform.inverse();
            }
            double[] at = {place.lonDeg(), place.latDeg()};
            inverse.transform(at, 0, at, 0, 1);
            return Double.isFinite(at[0]) && Double.isFinite(at[1]) ? at : null;
        } catch (TransformException e) {
            return null;
        }
    }

    private boolean isUsedAt(double lon, double lat) {
        double west = used.getWestBoundLongitude() - BEYOND_DEG;
        double width = used.getEastBoundLongitude() - used.getWestBoundLongitude();
        double eastward = (lon - west) % 360;
        return lat >= used.getSouthBoundLatitude() - BEYOND_DEG
                && lat <= used.getNorthBoundLatitude() + BEYOND_DEG
                && (eastward < 0 ? eastward + 360 : eastward) <= (width < 0 ? width + 360 : width) + 2 * BEYOND_DEG;
    }

    /** Which transformation is the best hangs on where it is needed: round the first position. */
    private void find(double east, double north) throws InputRejected, TransformException {
        try {
            CoordinateReferenceSystem target = CommonCRS.WGS84.normalizedGeographic();
            double[] about = {east, north};
            CRS.findOperation(system, target, null).getMathTransform().transform(about, 0, about, 0, 1);
            boolean there = isUsedAt(about[0], about[1]);
            operation = CRS.findOperation(
                    system,
                    target,
                    there
                            ? new DefaultGeographicBoundingBox(
                                    about[0] - BEYOND_DEG,
                                    about[0] + BEYOND_DEG,
                                    Math.max(-90, about[1] - BEYOND_DEG),
                                    Math.min(90, about[1] + BEYOND_DEG))
                            : null);
        } catch (FactoryException e) {
            throw unusable(code);
        }
        accuracyM = CRS.getLinearAccuracy(operation);
        // What is not known is not good enough.
        if (!(accuracyM >= 0 && accuracyM <= WORST_M)) {
            throw refused(
                    "crs-accuracy",
                    "EPSG:" + code + ", " + system.getName().getCode() + ", can be brought to WGS 84 only within "
                            + (accuracyM >= 0 ? meters(accuracyM) : "an unknown error") + " (" + steps() + ").",
                    "Export the track in longitude and latitude, WGS 84, where the transformation with its grids is at"
                            + " hand.");
        }
        transform = operation.getMathTransform();
    }

    /** What was done, once a position was asked for: system, axes, unit, transformation, accuracy. */
    public String told() {
        String unit = String.valueOf(system.getCoordinateSystem().getAxis(0).getUnit());
        return "Read as EPSG:" + code + ", " + system.getName().getCode() + ": first east, then north, in " + unit
                + "; brought to WGS 84 by " + steps() + ", accurate to " + meters(accuracyM) + ".";
    }

    private static String meters(double m) {
        return String.format(Locale.ROOT, "%.1f m", m);
    }

    private String steps() {
        List<String> names = new ArrayList<>();
        collect(operation, names);
        return names.isEmpty() ? "its projection alone" : String.join(", ", names);
    }

    private static void collect(CoordinateOperation one, List<String> names) {
        if (one instanceof ConcatenatedOperation several) {
            several.getOperations().forEach(o -> collect(o, names));
        } else if (one instanceof Transformation) {
            names.add(one.getName().getCode());
        }
    }

    /** For messages: "EPSG:2263". */
    public String name() {
        return "EPSG:" + code;
    }

    private static InputRejected unusable(int code) {
        return refused(
                "unusable-crs",
                "EPSG:" + code + " has no axes to the east and to the north that could be used here.",
                "Export the track in longitude and latitude, WGS 84.");
    }

    private static InputRejected refused(String code, String message, String remedy) {
        return new InputRejected(List.of(new InputProblem(code, message, "", remedy)));
    }
}
