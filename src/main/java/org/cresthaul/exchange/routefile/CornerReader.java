package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.geometry.Areas;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.Island;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.DrivenWay;
import org.cresthaul.route.CornerSource;
import org.cresthaul.route.Geodesic;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RoadFrame;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.SurveyedEnds;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/**
 * Reads the geometry of a corner: a template's measures, or outlines as surveyed. Either must fit the route line that
 * runs through it.
 */
final class CornerReader {
    static final LengthLimits ACCURACY = new LengthLimits(0.001, 5);
    /** How far a leg of the corner may point beside the route line. */
    static final double MOST_ASKEW_RAD = Math.toRadians(25);
    /** How far the route line may run beside the middle of the corner's roads, meters. */
    static final double MOST_BESIDE_M = 20;
    /** Where along the line a leg is compared with it, meters from the corner's point. */
    static final double NEAR_M = 35;

    static final double FAR_M = 75;
    static final int MOST_POINTS = 2000;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final JsonFields properties;
    private final Problems problems;
    private final Optional<Uncertainty> survey;
    private final Optional<CornerTemplate> template;
    private final Optional<SurveyedAreas> areas;
    private final boolean given;

    /** Outlines as positions; the first ring of an area is its edge, the others are holes. */
    private record SurveyedAreas(
            List<List<LonLat>> pavement,
            List<List<LonLat>> opposing,
            List<List<LonLat>> obstacles,
            List<Pole> poles,
            List<Raised> islands,
            OptionalDouble curbHeightM,
            boolean onLeft) {}

    private record Pole(LonLat at, double radiusM) {}

    private record Raised(List<LonLat> outline, OptionalDouble heightM) {}

    CornerReader(JsonFields properties) {
        this.properties = properties;
        problems = properties.problems();
        boolean hasTemplate = properties.has("template");
        boolean hasPavement = properties.has("pavement");
        given = hasTemplate || hasPavement;
        survey = survey();
        if (hasTemplate && hasPavement) {
            properties.problem(
                    "template",
                    "both-shapes",
                    "A corner has a template or surveyed outlines, not both.",
                    "Keep the survey: it says more.");
        }
        template =
                hasTemplate ? new CornerTemplateReader(problems).read(properties.object("template")) : Optional.empty();
        areas = hasPavement ? areas() : Optional.empty();
        if (!hasPavement) {
            for (String key : List.of("opposing", "obstacles", "islands", "curbHeight", "drives")) {
                if (properties.has(key)) {
                    properties.problem(
                            key,
                            "without-pavement",
                            key + " is given without the pavement.",
                            "Add \"pavement\", or put it into the template.");
                }
            }
        }
        if (given && survey.isEmpty() && !properties.has("survey")) {
            properties.problem(
                    "survey",
                    "missing",
                    "The geometry of a corner needs the accuracy of its survey.",
                    "Add \"survey\": {\"accuracy\": \"...\", \"source\": \"...\"}.");
        }
    }

    private Optional<Uncertainty> survey() {
        return properties.findObject("survey").flatMap(s -> SurveyFields.read(s, ACCURACY));
    }

    static boolean requireValid(Problems problems, Geometry area, String at) {
        TopologyValidationError error = new IsValidOp(area).getValidationError();
        if (error != null) {
            problems.add(
                    "self-crossing",
                    "The outline crosses or touches itself: " + error.getMessage() + ".",
                    at,
                    "List the points in order around the area, each once.");
        }
        return error == null;
    }

    private Optional<SurveyedAreas> areas() {
        int before = problems.count();
        List<List<LonLat>> pavement = rings(properties.object("pavement"));
        List<List<LonLat>> opposing = new ArrayList<>();
        for (JsonFields o : properties.findObjects("opposing", 0, 20)) {
            List<List<LonLat>> rings = rings(o);
            if (!rings.isEmpty()) {
                opposing.add(rings.get(0));
            }
        }
        List<List<LonLat>> obstacles = new ArrayList<>();
        List<Pole> poles = new ArrayList<>();
        for (JsonFields o : properties.findObjects("obstacles", 0, 500)) {
            o.findText("name", JsonFields.LONGEST_NAME);
            if (!o.isThere()) {
                continue;
            }
            if (o.has("at")) {
                LonLat at = PositionFields.read(o.find("at"), () -> o.pointer("at"), problems);
                double radius = o.lengthM("radius", CornerTemplateReader.POLE);
                if (at != null && !Double.isNaN(radius)) {
                    poles.add(new Pole(at, radius));
                }
            } else {
                List<List<LonLat>> rings = rings(o.object("outline"));
                if (!rings.isEmpty()) {
                    obstacles.add(rings.get(0));
                }
            }
            o.refuseOthers();
        }
        List<Raised> islands = new ArrayList<>();
        for (JsonFields o : properties.findObjects("islands", 0, 50)) {
            o.findText("name", JsonFields.LONGEST_NAME);
            List<List<LonLat>> rings = rings(o.object("outline"));
            OptionalDouble height = o.findLengthM("height", CornerTemplateReader.CURB);
            if (!rings.isEmpty()) {
                islands.add(new Raised(rings.get(0), height));
            }
            o.refuseOthers();
        }
        OptionalDouble curb = properties.findLengthM("curbHeight", CornerTemplateReader.CURB);
        boolean onLeft = CornerTemplateReader.onLeft(properties);
        return problems.count() == before && !pavement.isEmpty()
                ? Optional.of(new SurveyedAreas(pavement, opposing, obstacles, poles, islands, curb, onLeft))
                : Optional.empty();
    }

    /** A GeoJSON polygon. */
    private List<List<LonLat>> rings(JsonFields polygon) {
        polygon.word("type", List.of("Polygon"));
        RouteFile.refuseCrs(polygon);
        polygon.find("bbox");
        List<List<LonLat>> rings = new ArrayList<>();
        List<JsonNode> items = polygon.items("coordinates", 1, 50);
        for (int r = 0; r < items.size(); r++) {
            String at = polygon.pointer("coordinates") + "/" + r;
            List<LonLat> ring = new ArrayList<>();
            if (!items.get(r).isArray()
                    || items.get(r).size() < 4
                    || items.get(r).size() > MOST_POINTS) {
                problems.add(
                        "wrong-count",
                        "A ring has 4 to " + MOST_POINTS + " positions.",
                        at,
                        "List its positions, the first one again at the end.");
                continue;
            }
            for (int i = 0; i < items.get(r).size(); i++) {
                int index = i;
                LonLat position = PositionFields.read(items.get(r).get(i), () -> at + "/" + index, problems);
                if (position != null) {
                    ring.add(position);
                }
            }
            if (ring.size() == items.get(r).size() && !ring.get(0).equals(ring.get(ring.size() - 1))) {
                problems.add(
                        "ring-open",
                        "The ring does not end where it starts (RFC 7946, 3.1.6).",
                        at,
                        "Repeat its first position at the end.");
            }
            rings.add(ring);
        }
        polygon.refuseOthers();
        return rings;
    }

    /** The corner at its place; empty after a problem. */
    Optional<Hazard> placed(HazardPlace place, RouteLine line) {
        double chainage = place.chainageM();
        double in = azimuthOf(line, chainage - FAR_M, chainage - NEAR_M);
        RoadFrame frame = new RoadFrame(place.position(), in);
        if (!given) {
            return Optional.of(new RouteCorner(
                    place, Optional.empty(), Optional.empty(), frame, CornerSource.NOT_SURVEYED, Optional.empty()));
        }
        if (survey.isEmpty()) {
            return Optional.empty();
        }
        Optional<Corner> corner = template.isPresent()
                ? template.flatMap(t -> fitted(t, frame, line, chainage))
                : areas.flatMap(a -> surveyed(a, frame, line, chainage));
        return corner.map(c -> new RouteCorner(
                place,
                Optional.of(c),
                survey,
                frame,
                template.isPresent() ? CornerSource.TEMPLATE : CornerSource.SURVEYED,
                Optional.empty()));
    }

    private static double azimuthOf(RouteLine line, double from, double to) {
        double a = Math.max(0, Math.min(line.lengthM() - 1, from));
        double b = Math.max(a + 0.5, Math.min(line.lengthM(), to));
        LonLat start = line.frameAt(a).origin();
        LonLat end = line.frameAt(b).origin();
        return new Geodesic()
                .between(start.lonDeg(), start.latDeg(), end.lonDeg(), end.latDeg())
                .azimuthRad();
    }

    /** A template as the route line runs through it: its legs point where the line points before and after. */
    private Optional<Corner> fitted(CornerTemplate t, RoadFrame frame, RouteLine line, double chainage) {
        Corner corner = t.corner();
        Corner.RoadEnd exit = corner.backing() ? corner.approach() : corner.exit();
        double heading = corner.backing() ? exit.headingRad() + Math.PI : exit.headingRad();
        double ends = chainage + throughM(corner, exit);
        double out = azimuthOf(line, ends + NEAR_M, ends + FAR_M);
        double askew = Math.abs(Math.IEEEremainder(frame.azimuthRad() - heading - out, 2 * Math.PI));
        double[] before =
                frame.alongRightM(line.frameAt(Math.max(0, chainage - NEAR_M)).origin());
        double[] after = frame.alongRightM(
                line.frameAt(Math.min(line.lengthM(), ends + NEAR_M)).origin());
        double along = frame.azimuthRad() - out;
        double beside = Math.abs((-after[1] - exit.yM()) * Math.cos(along) - (after[0] - exit.xM()) * Math.sin(along));
        if (askew > MOST_ASKEW_RAD || Math.abs(before[1]) > MOST_BESIDE_M || beside > MOST_BESIDE_M) {
            properties.problem(
                    "template",
                    "legs-off-route",
                    "The corner's roads miss the route line"
                            + (askew > MOST_ASKEW_RAD
                                    ? ": its exit points " + Math.round(Math.toDegrees(askew)) + " degrees beside it."
                                    : "."),
                    "Check turn, angle and the corner's point: it is where the roads' center lines meet.");
            return Optional.empty();
        }
        return Optional.of(corner);
    }

    /**
     * How far the way goes on beyond the corner's point until it is on the exit: nothing where the roads meet in it.
     */
    private static double throughM(Corner corner, Corner.RoadEnd exit) {
        if (corner.backing() || Math.hypot(exit.xM(), exit.yM()) < 1e-9) {
            return 0;
        }
        LengthIndexedLine way = new LengthIndexedLine(corner.guide().orElseThrow());
        return Math.max(0, way.project(new Coordinate(exit.xM(), exit.yM())) - way.project(new Coordinate(0, 0)));
    }

    private Optional<Corner> surveyed(SurveyedAreas a, RoadFrame frame, RouteLine line, double chainage) {
        int before = problems.count();
        Polygon pavement = polygon(a.pavement, frame);
        requireValid(problems, pavement, properties.pointer("pavement"));
        Geometry opposing = together("opposing", a.opposing, frame);
        Geometry obstacles = withPoles(together("obstacles", a.obstacles, frame), a.poles, frame);
        List<Island> islands = new ArrayList<>();
        Geometry raised = Areas.none();
        for (int i = 0; i < a.islands.size(); i++) {
            Polygon p = polygon(List.of(a.islands.get(i).outline), frame);
            if (requireValid(problems, p, properties.pointer("islands") + "/" + i + "/outline")) {
                islands.add(new Island(p, a.islands.get(i).heightM));
                raised = Areas.union(raised, p);
            }
        }
        if (problems.count() > before) {
            return Optional.empty();
        }
        Geometry off = Areas.union(obstacles, raised);
        islands.addAll(unlisted(pavement, raised, obstacles));
        SurveyedEnds ends = new SurveyedEnds(pavement, opposing, frame, line, chainage);
        Optional<SurveyedEnds.End> in = ends.find(-1);
        Optional<SurveyedEnds.End> out = ends.find(1);
        Geometry free = Areas.without(Areas.without(pavement, opposing), off);
        if (in.isEmpty() || out.isEmpty() || free.isEmpty()) {
            properties.problem(
                    "pavement",
                    "legs-off-route",
                    "The route line does not enter and leave the pavement.",
                    "Draw the pavement from before the corner to past it, within 150 m, with the route line inside.");
            return Optional.empty();
        }
        Geometry drivable = Areas.sealed(
                Areas.union(free, Areas.union(in.get().road(), out.get().road())));
        Geometry against =
                Areas.union(opposing, Areas.union(in.get().opposing(), out.get().opposing()));
        Optional<Geometry> escorted = opposing.isEmpty()
                ? Optional.empty()
                : Optional.of(Areas.sealed(Areas.union(drivable, Areas.without(against, off))));
        return Optional.of(new Corner(
                drivable,
                escorted,
                Areas.sealed(against),
                obstacles,
                in.get().end(),
                out.get().end(),
                ends.turnRad(in.get(), out.get()),
                new Corner.Ground(a.curbHeightM, islands),
                Optional.of(DrivenWay.past(
                        ends.way(in.get(), out.get()),
                        islands.stream().map(Island::area).toList(),
                        !a.onLeft)),
                a.onLeft));
    }

    private Geometry together(String key, List<List<LonLat>> rings, RoadFrame frame) {
        Geometry all = Areas.none();
        for (int i = 0; i < rings.size(); i++) {
            Polygon p = polygon(List.of(rings.get(i)), frame);
            if (requireValid(problems, p, properties.pointer(key) + "/" + i)) {
                all = Areas.union(all, p);
            }
        }
        return all;
    }

    private static Geometry withPoles(Geometry obstacles, List<Pole> poles, RoadFrame frame) {
        Geometry all = obstacles;
        for (Pole pole : poles) {
            double[] at = frame.alongRightM(pole.at);
            all = Areas.union(
                    all,
                    BufferOp.bufferOp(
                            GEOMETRY.createPoint(new Coordinate(at[0], -at[1])),
                            pole.radiusM / Math.cos(Math.PI / 32)));
        }
        return all;
    }

    /** What of a hole is no listed island and no obstacle: an island of unknown height. */
    private static List<Island> unlisted(Polygon pavement, Geometry raised, Geometry obstacles) {
        List<Island> unlisted = new ArrayList<>();
        for (int i = 0; i < pavement.getNumInteriorRing(); i++) {
            Geometry hole = Areas.sealed(Areas.without(
                    Areas.without(GEOMETRY.createPolygon(pavement.getInteriorRingN(i)), raised), obstacles));
            if (!hole.isEmpty()) {
                unlisted.add(new Island(hole, OptionalDouble.empty()));
            }
        }
        return unlisted;
    }

    private static Polygon polygon(List<List<LonLat>> rings, RoadFrame frame) {
        org.locationtech.jts.geom.LinearRing[] holes = new org.locationtech.jts.geom.LinearRing[rings.size() - 1];
        for (int i = 1; i < rings.size(); i++) {
            holes[i - 1] = GEOMETRY.createLinearRing(ring(rings.get(i), frame));
        }
        return GEOMETRY.createPolygon(GEOMETRY.createLinearRing(ring(rings.get(0), frame)), holes);
    }

    private static Coordinate[] ring(List<LonLat> positions, RoadFrame frame) {
        Coordinate[] ring = new Coordinate[positions.size()];
        for (int i = 0; i < ring.length; i++) {
            double[] at = frame.alongRightM(positions.get(i));
            ring[i] = new Coordinate(at[0], -at[1]);
        }
        ring[ring.length - 1] = ring[0];
        return ring;
    }
}
