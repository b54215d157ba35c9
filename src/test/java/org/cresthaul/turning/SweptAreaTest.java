package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** Swept areas against the plain union of every rectangle, and the figures against their definitions. */
class SweptAreaTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /**
     * Every rectangle on a much finer track (its corners leave notches of up to 12 mm), united: slow, and with no idea
     * of ribbons.
     */
    private static Geometry plainUnion(Track fine, int unit, Body body) {
        List<Geometry> all = new ArrayList<>();
        for (int i = 0; i < fine.size(); i++) {
            Coordinate[] c = SweptArea.corners(fine, i, unit, body);
            all.add(GEOMETRY.createPolygon(new Coordinate[] {c[0], c[1], c[2], c[3], c[0]}));
        }
        return UnaryUnionOp.union(all);
    }

    @Test
    void holdsEveryRectangleAndHardlyMore() {
        int compared = 0;
        for (TurningCombination combination : List.of(CornerCases.lowbed(12.5, 2.4), CornerCases.lowbed(9, 0))) {
            for (double radius : new double[] {9.6, 15, 30}) {
                for (LeadPath path : List.of(
                        LeadPath.from(0, 0, 0)
                                .line(4)
                                .turn(Math.PI / 2, 1 / radius, 0.02)
                                .line(20)
                                .build(),
                        LeadPath.from(0, 0, 1)
                                .turn(-0.6, 1 / radius, 0.02)
                                .turn(2.4, 1 / radius, 0.02)
                                .turn(-0.5, 1 / radius, 0.02)
                                .line(15)
                                .build())) {
                    Track track = Following.along(combination.chain(), path);
                    double[] headings = new double[combination.chain().size()];
                    java.util.Arrays.fill(headings, path.at(0)[2]);
                    Track fine = Following.along(combination.chain(), path, headings, 0.02, false);
                    for (int k = 0; k < combination.units().size(); k++) {
                        Geometry swept =
                                SweptArea.ofBodies(track, k, combination.units().get(k));
                        assertTrue(swept.isValid());
                        Geometry plain = plainUnion(
                                fine, k, combination.units().get(k).bodies().get(0));
                        Geometry missed = plain.buffer(0).difference(swept.buffer(0.004));
                        assertEquals(0, missed.getArea(), 1e-9, "unit " + k + " radius " + radius);
                        Geometry more = swept.buffer(0).difference(plain.buffer(0.012));
                        assertEquals(0, more.getArea(), 1e-9, "unit " + k + " radius " + radius);
                        compared++;
                    }
                }
            }
        }
        assertEquals(30, compared);
    }

    @Test
    void staysValidWhenTheCombinationFoldsUp() {
        TurningCombination combination = CornerCases.lowbed(12.5, 2.4);
        LeadPath path = LeadPath.from(0, 0, 0).arc(40, 1 / 4.0).line(10).build();
        Track track = Following.along(combination.chain(), path);
        for (int k = 0; k < 3; k++) {
            assertTrue(SweptArea.ofBodies(track, k, combination.units().get(k)).isValid());
            assertTrue(SweptArea.ofTires(track, k, combination.units().get(k)).isValid());
        }
    }

    @Test
    void tiresOfAStraightRunAreTheirLanes() {
        TurningCombination combination = CornerCases.tractorAlone();
        Track track = Following.along(
                combination.chain(), LeadPath.from(0, 0, 0).line(30).build());
        AxleLine steer = combination.units().get(0).tires().get(0);
        double from = -5.8 - 0.65;
        double expected = (30 - from) * 2 * steer.halfWidthM();
        assertEquals(
                expected,
                SweptArea.ofTires(track, 0, combination.units().get(0)).getArea(),
                1e-3);
    }

    /**
     * T17: the low-speed maneuver of the Australian PBS scheme, radius 12.5 m through 90°, and the limits by which it
     * and NZTA judge (P for 0.30 m and 7.0 m): the figures exist by their definitions and order vehicles as they
     * should.
     */
    @Test
    void t17FiguresOfTheLowSpeedManeuver() {
        LeadPath path = LeadPath.from(0, 0, 0)
                .line(5)
                .arc(Math.PI / 2 * 12.5, -1 / 12.5)
                .line(40)
                .build();
        TurningCombination tractor = CornerCases.tractorAlone();
        TurningFigures alone = TurningFigures.of(Following.along(tractor.chain(), path), tractor);
        TurningCombination lowbed = CornerCases.lowbed(9, 0);
        TurningFigures longer = TurningFigures.of(Following.along(lowbed.chain(), path), lowbed);
        assertTrue(alone.sweptWidthM() < 7.0 && alone.tailSwing().valueM() < 0.30, alone.toString());
        assertTrue(longer.sweptWidthM() > alone.sweptWidthM());
        assertTrue(longer.offtrackingM().get(1) > longer.offtrackingM().get(0));
        assertTrue(alone.trailsWide().isEmpty() && longer.trailsWide().isEmpty());
        // T16's case by the same figure: 1.172 ft, here with the unit as wide as its body says.
        TurningCombination t16 = new TurningCombination(
                List.of(new TurningUnit(20, 0)),
                List.of(new TurningCombination.PlanUnit(
                        UnitName.TRACTOR,
                        List.of(new AxleLine(0, 4, 0.66, 0.25)),
                        List.of(new Body(UnitPart.BODY.of(UnitName.TRACTOR), -13, 20, 4)))),
                1,
                6,
                List.of());
        LeadPath circle =
                LeadPath.from(0, 0, 0).arc(Math.PI / 2 * 35.4, 1 / 35.4).build();
        assertEquals(
                1.172,
                TurningFigures.of(Following.along(t16.chain(), circle), t16)
                        .tailSwing()
                        .valueM(),
                0.005);
    }

    @Test
    void aShortBoosterOnALongOverhangTrailsWide() {
        LeadPath path = LeadPath.from(0, 0, 0).line(5).arc(200, 1 / 25.0).build();
        List<TurningUnit> chain = List.of(new TurningUnit(6, 0), new TurningUnit(11, 4), new TurningUnit(2, 0));
        TurningCombination model = CornerCases.lowbed(11, 2);
        TurningCombination combination = new TurningCombination(
                chain, model.units(), model.steerLimitRad(), model.lockDistanceM(), model.articulationLimitRad());
        TurningFigures figures = TurningFigures.of(Following.along(chain, path), combination);
        SteadyTurn steady = SteadyTurn.of(chain, 25).orElseThrow();
        double apart = steady.axleRadiusM().get(2) - steady.axleRadiusM().get(1);
        assertTrue(apart > 0.2, "the chain rule says it runs outside: " + apart);
        assertTrue(figures.trailsWide().orElseThrow().valueM() > apart - 0.15, figures.toString());
        assertTrue(figures.pivotSwing().orElseThrow().valueM() > apart, figures.toString());
    }
}
