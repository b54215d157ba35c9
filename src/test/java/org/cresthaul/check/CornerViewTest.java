package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.road.Corner;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.turning.Against;
import org.cresthaul.turning.Following;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** What is marked in the picture of a corner, against the geometry it was judged by. */
class CornerViewTest {
    /** Places are told to 0.1 mm each way. */
    private static final double ROUNDED_M = 0.0005;
    /** The mark stands where the part is in the nearest state; the least may be half a state's way before or behind. */
    private static final double BOUND_M = Following.STATE_M / 2;

    private static final List<SampleHaul> HAULS =
            List.of(SampleHaul.of("alder-county", "lowbed-loaded"), SampleHaul.of("sorrel-valley", "lowbed-loaded"));

    private record Seen(RouteCorner corner, CornerView view) {}

    /** Every surveyed corner of two samples, short and long. */
    private static final List<Seen> SEEN = seen();

    private static List<Seen> seen() {
        List<Seen> all = new ArrayList<>();
        for (SampleHaul it : HAULS) {
            for (RouteCorner corner : it.route().hazards().stream()
                    .filter(RouteCorner.class::isInstance)
                    .map(RouteCorner.class::cast)
                    .filter(c -> c.shape().isPresent())
                    .toList()) {
                for (String key : List.of("down/none/1", "up/trailing/1")) {
                    all.add(new Seen(
                            corner,
                            CornerView.of(
                                    it.route(),
                                    it.rig(),
                                    it.stance(),
                                    it.margins(),
                                    corner.place().id(),
                                    key)));
                }
            }
        }
        return all;
    }

    private static double apartM(List<Double> a, List<Double> b) {
        return Math.hypot(a.get(0) - b.get(0), a.get(1) - b.get(1));
    }

    /** The mark is as long as the room is, its end is on an edge, and the room is the least the report tells. */
    @Test
    void theLeastRoomIsMarkedWhereItIs() {
        List<Seen> all = SEEN;
        int open = 0;
        for (Seen s : all) {
            CornerView.LeastView least = s.view.least();
            String what = s.view.hazard() + " " + s.view.configuration() + " " + least;
            double drawnM = Math.signum(least.roomM()) * apartM(least.at(), least.to());
            assertTrue(drawnM > least.roomM() - ROUNDED_M && drawnM < least.roomM() + BOUND_M, what + " " + drawnM);
            open += least.roomM() > 0 ? 1 : 0;
            Corner corner = s.corner.shape().orElseThrow();
            if (least.against() == Against.PAVEMENT && !s.view.escorts()) {
                Geometry to = new GeometryFactory()
                        .createPoint(
                                new Coordinate(least.to().get(0), least.to().get(1)));
                assertEquals(0, corner.pavement().getBoundary().distance(to), ROUNDED_M, what);
            }
        }
        assertTrue(all.size() >= 6, all.size() + " views");
        assertTrue(open >= 3, open + " with room");
    }

    /** Where a leg is straight its width is that of the surveyed road end: what the file says, in other words. */
    @Test
    void theLanesAreAsWideAsTheyWereSurveyed() {
        int own = 0;
        int opposing = 0;
        for (Seen s : SEEN) {
            if (!s.corner.source().equals("template") || s.view.backing()) {
                continue;
            }
            Corner corner = s.corner.shape().orElseThrow();
            Corner.RoadEnd in = corner.approach();
            List<CornerView.WidthView> widths = s.view.widths();
            String what = s.view.hazard() + " " + s.view.configuration() + " " + widths + " " + in;
            assertTrue(!widths.isEmpty() && widths.get(0).own(), what);
            assertEquals(in.leftM() + in.rightM(), widths.get(0).widthM(), 0.001, what);
            own++;
            double beside = in.escortedLeftM() + in.escortedRightM() - in.leftM() - in.rightM();
            if (beside > 0.1 && widths.size() > 1 && !widths.get(1).own()) {
                assertEquals(beside, widths.get(1).widthM(), 0.001, what);
                opposing++;
            }
        }
        assertTrue(own >= 4, own + " approaches");
        assertTrue(opposing >= 2, opposing + " lanes beside");
    }
}
