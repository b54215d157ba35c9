package org.cresthaul.route;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Areas;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.KerbReturn;
import org.cresthaul.road.CornerTemplate.Obstacle;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.cresthaul.units.JsonFields;
import org.cresthaul.units.JsonQuantities;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/**
 * Reads the geometry of a corner: a template's measures, or outlines as surveyed. Either must fit the route line that runs
 * through it.
 */
final class CornerReader {
    static final LengthLimits LANES = new LengthLimits(2, 40);
    static final LengthLimits BESIDE = new LengthLimits(0, 40);
    static final LengthLimits RADIUS = new LengthLimits(0, 150);
    static final LengthLimits ISLAND = new LengthLimits(0.5, 100);
    static final LengthLimits PLACE = new LengthLimits(-150, 150);
    static final LengthLimits POLE = new LengthLimits(0.02, 10);
    static final LengthLimits ACCURACY = new LengthLimits(0.001, 5);
    /** How far a leg of the corner may point beside the route line. */
    static final double MOST_ASKEW_RAD = Math.toRadians(25);
    /** How far the route line may run beside the middle of the corner's roads, metres. */
    static final double MOST_BESIDE_M = 20;
    /** Where along the line a leg is compared with it, metres from the corner's point. */
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
            List<List<LonLat>> pavement, List<List<LonLat>> opposing, List<List<LonLat>> obstacles, List<Pole> poles) {}

    private record Pole(LonLat at, double radiusM) {}

    CornerReader(JsonFields properties) {
        this.properties = properties;
        problems = properties.problems();
        boolean hasTemplate = properties.has("template");
        boolean hasPavement = properties.has("pavement");
        given = hasTemplate || hasPavement;
        survey = survey();
        if (hasTemplate && hasPavement) {
            properties.problem("template", "both-shapes", "A corner has a template or surveyed outlines, not both.",
                    "Keep the survey: it says more.");
        }
        template = hasTemplate ? template(properties.object("template")) : Optional.empty();
        areas = hasPavement ? areas() : Optional.empty();
        if (!hasPavement) {
            for (String key : List.of("opposing", "obstacles")) {
                if (properties.has(key)) {
                    properties.problem(key, "without-pavement", key + " is given without the pavement.",
                            "Add \"pavement\", or put it into the template.");
                }
            }
        }
        if (given && survey.isEmpty() && !properties.has("survey")) {
            properties.problem("survey", "missing", "The geometry of a corner needs the accuracy of its survey.",
                    "Add \"survey\": {\"accuracy\": \"...\", \"source\": \"...\"}.");
        }
    }

    private Optional<Uncertainty> survey() {
        Optional<JsonFields> fields = properties.findObject("survey");
        if (fields.isEmpty()) {
            return Optional.empty();
        }
        int before = problems.count();
        double accuracyM = fields.get().lengthM("accuracy", ACCURACY);
        String source = fields.get().text("source", JsonFields.LONGEST_NAME);
        fields.get().refuseOthers();
        return fields.get().isThere() && problems.count() == before ? Optional.of(new Uncertainty(accuracyM, source)) : Optional.empty();
    }

    private Optional<CornerTemplate> template(JsonFields t) {
        if (!t.isThere()) {
            return Optional.empty();
        }
        int before = problems.count();
        Optional<JsonFields> round = t.findObject("roundabout");
        String turn = t.word("turn", List.of("left", "right"));
        double least = round.isPresent() ? 0 : Math.toRadians(20);
        double angle = t.angleRad("angle", least, Math.toRadians(150));
        List<String> borrow = words(t, "borrow", List.of("approach", "exit"));
        RoadWidths approach = road(t.object("approach"), borrow.contains("approach"));
        RoadWidths exit = road(t.object("exit"), borrow.contains("exit"));
        KerbReturn kerb = KerbReturn.single(0);
        Optional<Roundabout> roundabout = Optional.empty();
        if (round.isPresent()) {
            roundabout = roundabout(round.get());
            if (t.has("kerb")) {
                t.problem("kerb", "kerb-on-roundabout", "A roundabout has its kerb returns in \"roundabout\".",
                        "Leave \"kerb\" out.");
            }
        } else {
            kerb = kerb(t.object("kerb"));
        }
        double apronM = t.findLengthM("apron", BESIDE).orElse(0);
        List<List<PlanPoint>> islands = new ArrayList<>();
        for (JsonFields island : t.findObjects("islands", 0, 50)) {
            islands.add(outline(island, "outline"));
            island.refuseOthers();
        }
        List<Obstacle> obstacles = new ArrayList<>();
        for (JsonFields o : t.findObjects("obstacles", 0, 200)) {
            o.findText("name", JsonFields.LONGEST_NAME);
            if (!o.isThere()) {
                continue;
            }
            if (o.has("outline")) {
                List<PlanPoint> outline = outline(o, "outline");
                if (outline.size() >= 3) {
                    obstacles.add(new Obstacle(outline, 0));
                }
            } else {
                PlanPoint at = point(o.find("at"), o.pointer("at"));
                double radius = o.lengthM("radius", POLE);
                if (at != null && !Double.isNaN(radius)) {
                    obstacles.add(new Obstacle(List.of(at), radius));
                }
            }
            o.refuseOthers();
        }
        t.refuseOthers();
        if (problems.count() > before || Double.isNaN(apronM)) {
            return Optional.empty();
        }
        return Optional.of(new CornerTemplate(
                turn.equals("left") ? angle : -angle, approach, exit, kerb, apronM, roundabout, islands, obstacles));
    }

    private static List<String> words(JsonFields t, String key, List<String> known) {
        List<String> words = new ArrayList<>();
        List<JsonNode> items = t.findItems(key, 0, known.size()).orElse(List.of());
        for (int i = 0; i < items.size(); i++) {
            if (!items.get(i).isTextual() || !known.contains(items.get(i).textValue())) {
                t.problems().add("unknown-word", key + " holds something else than " + String.join(", ", known) + ".",
                        t.pointer(key) + "/" + i, "Name the road whose opposing lanes may be borrowed.");
            } else {
                words.add(items.get(i).textValue());
            }
        }
        return words;
    }

    private static RoadWidths road(JsonFields road, boolean borrow) {
        int before = road.problems().count();
        double own = road.lengthM("own", LANES);
        double opposing = road.lengthM("opposing", BESIDE);
        double shoulder = road.findLengthM("shoulder", BESIDE).orElse(0);
        road.refuseOthers();
        return road.isThere() && road.problems().count() == before
                ? new RoadWidths(own, opposing, shoulder, borrow)
                : null;
    }

    private static KerbReturn kerb(JsonFields kerb) {
        int before = kerb.problems().count();
        if (!kerb.has("radii")) {
            double radius = kerb.lengthM("radius", RADIUS);
            kerb.refuseOthers();
            return kerb.isThere() && kerb.problems().count() == before ? KerbReturn.single(radius) : null;
        }
        double[] radii = {Double.NaN, Double.NaN, Double.NaN};
        List<JsonNode> items = kerb.items("radii", 3, 3);
        for (int i = 0; i < items.size(); i++) {
            radii[i] = JsonQuantities.lengthM(items.get(i), kerb.pointer("radii") + "/" + i, "A radius", RADIUS,
                    kerb.problems());
        }
        double offset = kerb.lengthM("offset", BESIDE);
        if (radii[0] < radii[1] + offset || radii[2] < radii[1] + offset) {
            kerb.problem("radii", "order", "The middle radius and the offset are more than an outer radius.",
                    "Give first, middle, last; the middle one is the tightest.");
        }
        kerb.refuseOthers();
        return kerb.problems().count() == before ? new KerbReturn(radii[0], radii[1], radii[2], offset) : null;
    }

    private static Optional<Roundabout> roundabout(JsonFields round) {
        int before = round.problems().count();
        double outer = round.lengthM("outer", ISLAND);
        double island = round.lengthM("island", ISLAND);
        double kerb = round.lengthM("kerb", RADIUS);
        if (outer < island + 2) {
            round.problem("outer", "order", "The roundabout's outer radius leaves no lane around its island.",
                    "Give the radius of the outer edge; it is larger than the island's.");
        }
        round.refuseOthers();
        return round.isThere() && round.problems().count() == before ? Optional.of(new Roundabout(outer, island, kerb)) : Optional.empty();
    }

    private List<PlanPoint> outline(JsonFields fields, String key) {
        List<PlanPoint> points = new ArrayList<>();
        List<JsonNode> items = fields.items(key, 3, MOST_POINTS);
        int before = problems.count();
        for (int i = 0; i < items.size(); i++) {
            PlanPoint p = point(items.get(i), fields.pointer(key) + "/" + i);
            if (p != null) {
                points.add(p);
            }
        }
        if (problems.count() == before && points.size() >= 3) {
            Coordinate[] ring = new Coordinate[points.size() + 1];
            for (int i = 0; i <= points.size(); i++) {
                PlanPoint p = points.get(i % points.size());
                ring[i] = new Coordinate(p.xM(), p.yM());
            }
            requireValid(GEOMETRY.createPolygon(ring), fields.pointer(key));
        }
        return points;
    }

    private PlanPoint point(JsonNode node, String at) {
        if (!node.isArray() || node.size() != 2) {
            problems.add(node.isMissingNode() ? "missing" : "wrong-type", "A place is two lengths.", at,
                    "Write [\"12 ft\", \"-30 ft\"]: along the approach, and to its left.");
            return null;
        }
        double x = JsonQuantities.lengthM(node.get(0), at + "/0", "x", PLACE, problems);
        double y = JsonQuantities.lengthM(node.get(1), at + "/1", "y", PLACE, problems);
        return Double.isNaN(x) || Double.isNaN(y) ? null : new PlanPoint(x, y);
    }

    private boolean requireValid(Geometry area, String at) {
        TopologyValidationError error = new IsValidOp(area).getValidationError();
        if (error != null) {
            problems.add("self-crossing", "The outline crosses or touches itself: " + error.getMessage() + ".", at,
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
                double radius = o.lengthM("radius", POLE);
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
        return problems.count() == before && !pavement.isEmpty()
                ? Optional.of(new SurveyedAreas(pavement, opposing, obstacles, poles))
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
            if (!items.get(r).isArray() || items.get(r).size() < 4 || items.get(r).size() > MOST_POINTS) {
                problems.add("wrong-count", "A ring has 4 to " + MOST_POINTS + " positions.", at,
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
                problems.add("ring-open", "The ring does not end where it starts (RFC 7946, 3.1.6).", at,
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
            return Optional.of(new RouteCorner(place, Optional.empty(), Optional.empty(), frame, "not surveyed",
                    Optional.empty()));
        }
        if (survey.isEmpty()) {
            return Optional.empty();
        }
        double out = azimuthOf(line, chainage + NEAR_M, chainage + FAR_M);
        Optional<Corner> corner = template.isPresent()
                ? template.flatMap(t -> fitted(t, frame, line, chainage, out))
                : areas.flatMap(a -> surveyed(a, frame, line, chainage));
        return corner.map(c -> new RouteCorner(
                place, Optional.of(c), survey, frame, template.isPresent() ? "template" : "surveyed", Optional.empty()));
    }

    private static double azimuthOf(RouteLine line, double from, double to) {
        double a = Math.max(0, Math.min(line.lengthM() - 1, from));
        double b = Math.max(a + 0.5, Math.min(line.lengthM(), to));
        LonLat start = line.frameAt(a).origin();
        LonLat end = line.frameAt(b).origin();
        return new Geodesic().between(start.lonDeg(), start.latDeg(), end.lonDeg(), end.latDeg()).azimuthRad();
    }

    private Optional<Corner> fitted(CornerTemplate t, RoadFrame frame, RouteLine line, double chainage, double out) {
        double askew = Math.abs(Math.IEEEremainder(frame.azimuthRad() - t.turnRad() - out, 2 * Math.PI));
        double[] before = frame.alongRightM(line.frameAt(Math.max(0, chainage - NEAR_M)).origin());
        double[] after = new RoadFrame(frame.origin(), out)
                .alongRightM(line.frameAt(Math.min(line.lengthM(), chainage + NEAR_M)).origin());
        if (askew > MOST_ASKEW_RAD || Math.abs(before[1]) > MOST_BESIDE_M || Math.abs(after[1]) > MOST_BESIDE_M) {
            properties.problem("template", "legs-off-route", "The corner's roads miss the route line"
                    + (askew > MOST_ASKEW_RAD ? ": its exit points " + Math.round(Math.toDegrees(askew))
                            + " degrees beside it." : "."),
                    "Check turn, angle and the corner's point: it is where the roads' centre lines meet.");
            return Optional.empty();
        }
        return Optional.of(t.corner());
    }

    private Optional<Corner> surveyed(SurveyedAreas a, RoadFrame frame, RouteLine line, double chainage) {
        int before = problems.count();
        Polygon pavement = polygon(a.pavement, frame);
        requireValid(pavement, properties.pointer("pavement"));
        Geometry opposing = Areas.none();
        for (int i = 0; i < a.opposing.size(); i++) {
            Polygon p = polygon(List.of(a.opposing.get(i)), frame);
            if (requireValid(p, properties.pointer("opposing") + "/" + i)) {
                opposing = Areas.union(opposing, p);
            }
        }
        Geometry obstacles = Areas.none();
        for (int i = 0; i < a.obstacles.size(); i++) {
            Polygon p = polygon(List.of(a.obstacles.get(i)), frame);
            if (requireValid(p, properties.pointer("obstacles") + "/" + i)) {
                obstacles = Areas.union(obstacles, p);
            }
        }
        for (Pole pole : a.poles) {
            double[] at = frame.alongRightM(pole.at);
            obstacles = Areas.union(obstacles, BufferOp.bufferOp(
                    GEOMETRY.createPoint(new Coordinate(at[0], -at[1])), pole.radiusM / Math.cos(Math.PI / 32)));
        }
        if (problems.count() > before) {
            return Optional.empty();
        }
        Geometry free = Areas.without(Areas.without(pavement, opposing), obstacles);
        SurveyedEnds ends = new SurveyedEnds(pavement, frame, line, chainage);
        Optional<SurveyedEnds.End> in = ends.find(-1);
        Optional<SurveyedEnds.End> out = ends.find(1);
        if (in.isEmpty() || out.isEmpty() || free.isEmpty()) {
            properties.problem("pavement", "legs-off-route", "The route line does not enter and leave the pavement.",
                    "Draw the pavement from before the corner to past it, within 150 m, with the route line inside.");
            return Optional.empty();
        }
        Geometry longer = Areas.union(free, Areas.union(in.get().road(), out.get().road()));
        Optional<Geometry> escorted =
                opposing.isEmpty() ? Optional.empty() : Optional.of(Areas.union(longer, Areas.without(opposing, obstacles)));
        double turn = ends.turnRad(in.get(), out.get());
        return Optional.of(new Corner(longer, escorted, opposing, obstacles, in.get().end(), out.get().end(), turn));
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
