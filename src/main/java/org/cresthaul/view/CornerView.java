package org.cresthaul.view;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.check.CornerCheck;
import org.cresthaul.check.JoinedCorners;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.geometry.Areas;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Verdict;
import org.cresthaul.road.Corner;
import org.cresthaul.route.CornerSource;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.CornerSpace;
import org.cresthaul.turning.Side;
import org.cresthaul.turning.SweptArea;
import org.cresthaul.turning.Track;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * One combination going round one corner, for drawing: the component names are the keys of its JSON form. Places are
 * meters in the corner's frame (x along the approach, y to its left, origin at the hazard's point); what goes on a map
 * is given in longitude and latitude too. See docs/api.md.
 *
 * @param pavement opposing obstacles rings of areas: [x, y] each
 * @param swept what each unit passes over
 * @param lead the lead line; leadLonLat the same on the map
 * @param encroachments where a tire is off the pavement or a body over what it must miss
 * @param backing whether positions are those of backing in, in the order they are driven
 * @param marks along the lead line, in the order they are driven
 * @param positions the combination state by state
 * @param tightest index into positions
 * @param least where the least room on the line itself is
 * @param widths of the lanes before and behind the turn
 */
public record CornerView(
        String hazard,
        String configuration,
        Verdict verdict,
        boolean escorts,
        List<Double> origin,
        double azimuthRad,
        List<List<List<Double>>> pavement,
        List<List<List<Double>>> escorted,
        List<List<List<Double>>> opposing,
        List<List<List<Double>>> obstacles,
        List<SweptView> swept,
        List<List<Double>> lead,
        List<List<Double>> leadLonLat,
        List<EncroachmentView> encroachments,
        List<UnitShape> units,
        boolean backing,
        List<MarkView> marks,
        List<PositionView> positions,
        int tightest,
        LeastView least,
        List<WidthView> widths) {
    /** So much of roads and obstacles is drawn around what the combination passes over, meters. */
    private static final double AROUND_M = 15;
    /** A ring that holds less than this is none, square meters: a millimeter wide and as long as a truck. */
    private static final double LEAST_M2 = 0.02;

    /** Areas that tires run over and bodies pass over: rings in meters, and the same in longitude and latitude. */
    public record SweptView(
            String unit,
            List<List<List<Double>>> tires,
            List<List<List<Double>>> bodies,
            List<List<List<Double>>> tiresLonLat,
            List<List<List<Double>>> bodiesLonLat) {}

    /** @param kind "tires" or what body; byM its size at the worst place */
    public record EncroachmentView(
            String unit,
            String kind,
            Side side,
            Against against,
            double byM,
            List<Double> at,
            List<List<List<Double>>> rings) {}

    /**
     * A place along the line with a name.
     *
     * @param words in a driver's words
     * @param at the steer axle there; position index of it
     * @param place of the landmark it is abreast of, or null
     */
    public record MarkView(MarkKind kind, Sentence words, List<Double> at, int position, List<Double> place) {}

    /**
     * The least room on the line itself.
     *
     * @param roomM negative: it encroaches by so much
     * @param at of the unit; to of the edge that it is measured to
     */
    public record LeastView(
            String unit,
            String part,
            Side side,
            Against against,
            @Rounded(Rounding.LENGTH_DOWN) double roomM,
            List<Double> at,
            List<Double> to) {}

    /**
     * A cross-section of the road.
     *
     * @param own own lanes with their shoulder; else opposing lanes beside them
     * @param from to its ends
     */
    public record WidthView(
            boolean own, @Rounded(Rounding.LENGTH_DOWN) double widthM, List<Double> from, List<Double> to) {}

    /** A unit in its own frame: rectangles [rear, front, half width] and tires [ahead, half width]. */
    public record UnitShape(String unit, List<List<Double>> bodies, List<List<Double>> tires) {}

    /**
     * @param stationM of the steer axle along the lead line
     * @param poses of each unit: x and y of its effective axle, heading
     * @param steerRad articulationRad positive to the left
     */
    public record PositionView(
            double stationM, List<List<Double>> poses, double steerRad, List<Double> articulationRad) {}

    /**
     * The way round in one configuration.
     *
     * @throws UnknownNameException when the route has no such corner, or the rig no such configuration
     * @throws NotSurveyedException when corner or combination are not known from above
     */
    public static CornerView of(Haul haul, String hazardId, String configurationKey) {
        Hazard hazard = haul.route()
                .findHazard(hazardId)
                .orElseThrow(() -> new UnknownNameException("the haul.route() has no hazard " + hazardId, "hazard"));
        if (!(hazard instanceof RouteCorner corner)) {
            throw new UnknownNameException(hazardId + " is not a corner", "hazard");
        }
        CheckedConfiguration configuration = CheckedConfiguration.listOf(haul.rig(), haul.stance()).stream()
                .filter(c -> c.key().equals(configurationKey))
                .findFirst()
                .orElseThrow(() -> new UnknownNameException(
                        "the haul.rig() has no configuration " + configurationKey, "configuration"));
        if (corner.shape().isEmpty()) {
            throw new NotSurveyedException(hazardId + " is not surveyed: there is nothing to draw");
        }
        JoinedCorners.Judging judging = new JoinedCorners(haul.route(), haul.stance()).of(corner);
        Optional<CornerCheck.JudgedCorner> judged = new CornerCheck(
                        judging, haul.rig(), haul.stance(), haul.margins(), new HashMap<>())
                .judge(configuration);
        CornerCheck.JudgedCorner j = judged.orElseThrow(() -> new NotSurveyedException(
                "the haul.rig() file has no plan: how wide it is and how far it turns is not known"));
        return view(judging.corner(), configuration, j);
    }

    private static CornerView view(RouteCorner hazard, CheckedConfiguration configuration, CornerCheck.JudgedCorner j) {
        Corner corner = hazard.shape().orElseThrow();
        CornerFit fit = j.fit();
        Track track = fit.track();
        List<Geometry> runOver = new ArrayList<>();
        List<Geometry> passedOver = new ArrayList<>();
        Envelope shown = new Envelope(0, 0, 0, 0);
        for (int k = 0; k < fit.combination().units().size(); k++) {
            runOver.add(SweptArea.ofTires(track, k, fit.combination().units().get(k)));
            passedOver.add(
                    SweptArea.ofBodies(track, k, fit.combination().units().get(k)));
            shown.expandToInclude(runOver.get(k).getEnvelopeInternal());
            shown.expandToInclude(passedOver.get(k).getEnvelopeInternal());
        }
        shown.expandBy(AROUND_M);
        Geometry frame = new GeometryFactory().toGeometry(shown);
        List<SweptView> swept = new ArrayList<>();
        List<EncroachmentView> encroachments = new ArrayList<>();
        Geometry allowed = fit.escorts() ? corner.escorted().orElseThrow() : corner.pavement();
        Geometry closed = Areas.union(
                corner.obstacles(), fit.escorts() ? Areas.without(corner.opposing(), allowed) : corner.opposing());
        List<UnitShape> shapes = new ArrayList<>();
        for (int k = 0; k < fit.combination().units().size(); k++) {
            TurningCombination.PlanUnit unit = fit.combination().units().get(k);
            Geometry tires = runOver.get(k);
            Geometry bodies = passedOver.get(k);
            swept.add(new SweptView(
                    unit.name().word(), rings(tires), rings(bodies), onMap(hazard, tires), onMap(hazard, bodies)));
            for (CornerFit.Gap gap : fit.gaps()) {
                if (gap.unit() == k && gap.valueM() < 0) {
                    // Only tires keep off the edge of the pavement.
                    boolean isTires = gap.against() == Against.PAVEMENT;
                    Geometry over = isTires ? Areas.without(tires, allowed) : Areas.common(bodies, closed);
                    encroachments.add(new EncroachmentView(
                            unit.name().word(),
                            gap.part().word(),
                            gap.side(),
                            gap.against(),
                            DrawnLengths.up(-gap.valueM()),
                            List.of(DrawnLengths.near(gap.xM()), DrawnLengths.near(gap.yM())),
                            rings(over)));
                }
            }
            shapes.add(new UnitShape(
                    unit.name().word(),
                    unit.bodies().stream()
                            .map(b -> List.of(
                                    DrawnLengths.near(b.rearM()),
                                    DrawnLengths.near(b.frontM()),
                                    DrawnLengths.near(b.halfWidthM())))
                            .toList(),
                    unit.tires().stream()
                            .map(t -> List.of(DrawnLengths.near(t.aheadM()), DrawnLengths.near(t.halfWidthM())))
                            .toList()));
        }
        List<List<Double>> lead = new ArrayList<>();
        List<List<Double>> leadLonLat = new ArrayList<>();
        List<PositionView> positions = new ArrayList<>();
        // Backing in, the pull-out is driven from its end.
        int last = track.size() - 1;
        boolean back = corner.backing();
        int tightest = fit.stateAt(fit.tightest().stationM());
        tightest = back ? last - tightest : tightest;
        List<MarkView> marks = CornerMarks.of(corner, fit, hazard.source() == CornerSource.TEMPLATE).stream()
                .map(m -> new MarkView(
                        m.kind(),
                        m.words(),
                        List.of(DrawnLengths.near(track.leadXM(m.state())), DrawnLengths.near(track.leadYM(m.state()))),
                        back ? last - m.state() : m.state(),
                        m.place() == null
                                ? null
                                : List.of(DrawnLengths.near(m.place().x), DrawnLengths.near(m.place().y))))
                .toList();
        for (int n = 0; n <= last; n++) {
            int i = back ? last - n : n;
            lead.add(List.of(DrawnLengths.near(track.leadXM(i)), DrawnLengths.near(track.leadYM(i))));
            leadLonLat.add(CornerCheck.lonLat(hazard, track.leadXM(i), track.leadYM(i)));
            positions.add(position(track, i, Math.abs(track.stationM(i) - track.stationM(back ? last : 0))));
        }
        return new CornerView(
                hazard.place().id(),
                configuration.key(),
                j.verdict(),
                j.escorts(),
                List.of(
                        hazard.frame().origin().lonDeg(),
                        hazard.frame().origin().latDeg()),
                Math.rint(hazard.frame().azimuthRad() * 1e8) / 1e8,
                rings(Areas.common(corner.pavement(), frame)),
                corner.escorted().map(e -> rings(Areas.common(e, frame))).orElse(List.of()),
                rings(Areas.common(corner.opposing(), frame)),
                rings(Areas.common(corner.obstacles(), frame)),
                swept,
                lead,
                leadLonLat,
                encroachments,
                shapes,
                back,
                marks,
                positions,
                tightest,
                least(corner, fit),
                LaneWidths.of(corner, track));
    }

    private static LeastView least(Corner corner, CornerFit fit) {
        CornerFit.Gap gap = fit.tightest();
        List<Double> at = List.of(DrawnLengths.near(gap.xM()), DrawnLengths.near(gap.yM()));
        return new LeastView(
                fit.combination().units().get(gap.unit()).name().word(),
                gap.part().word(),
                gap.side(),
                gap.against(),
                gap.valueM(),
                at,
                new CornerSpace(corner, fit.escorts())
                        .edgeAt(gap)
                        .map(to -> List.of(DrawnLengths.near(to.x), DrawnLengths.near(to.y)))
                        .orElse(at));
    }

    private static PositionView position(Track track, int i, double stationM) {
        List<List<Double>> poses = new ArrayList<>();
        List<Double> bends = new ArrayList<>();
        int units = track.chain().size();
        for (int k = 0; k < units; k++) {
            poses.add(List.of(
                    DrawnLengths.near(track.axleXM(i, k)),
                    DrawnLengths.near(track.axleYM(i, k)),
                    Math.rint(track.headingRad(i, k) * 1e5) / 1e5));
            if (k + 1 < units) {
                bends.add(Math.rint(track.articulationRad(i, k) * 1e5) / 1e5);
            }
        }
        return new PositionView(DrawnLengths.near(stationM), poses, Math.rint(track.steerRad(i) * 1e5) / 1e5, bends);
    }

    private static List<List<List<Double>>> rings(Geometry area) {
        List<List<List<Double>>> rings = new ArrayList<>();
        for (LineString ring : ringsOf(area)) {
            List<List<Double>> points = new ArrayList<>();
            for (Coordinate c : ring.getCoordinates()) {
                points.add(List.of(DrawnLengths.near(c.x), DrawnLengths.near(c.y)));
            }
            rings.add(points);
        }
        return rings;
    }

    private static List<List<List<Double>>> onMap(RouteCorner hazard, Geometry area) {
        List<List<List<Double>>> rings = new ArrayList<>();
        for (LineString ring : ringsOf(area)) {
            List<List<Double>> points = new ArrayList<>();
            for (Coordinate c : ring.getCoordinates()) {
                points.add(CornerCheck.lonLat(hazard, c.x, c.y));
            }
            rings.add(points);
        }
        return rings;
    }

    private static List<LineString> ringsOf(Geometry area) {
        List<LineString> rings = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
                addRing(rings, p.getExteriorRing());
                for (int h = 0; h < p.getNumInteriorRing(); h++) {
                    addRing(rings, p.getInteriorRingN(h));
                }
            }
        }
        return rings;
    }

    /** Rings that hold nothing, which areas touched along a line leave, are not drawn. */
    private static void addRing(List<LineString> rings, LinearRing ring) {
        if (Math.abs(Area.ofRing(ring.getCoordinateSequence())) >= LEAST_M2) {
            rings.add(ring);
        }
    }
}
