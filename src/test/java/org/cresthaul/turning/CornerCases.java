package org.cresthaul.turning;

import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/** Corners and combinations that the tests share; invented, of usual proportions. */
final class CornerCases {
    private CornerCases() {}

    static Corner junction(double degrees, double ownM, double opposingM, double radiusM, boolean borrow) {
        RoadWidths road = new RoadWidths(ownM, opposingM, 0, borrow);
        return new CornerTemplate(
                        Math.toRadians(degrees),
                        road,
                        road,
                        CurbReturn.single(radiusM),
                        0,
                        Optional.empty(),
                        List.of(),
                        List.of())
                .corner();
    }

    static Corner roundabout(double degrees, double outerM, double islandM, double apronM) {
        RoadWidths road = new RoadWidths(5, 5, 0, false);
        return new CornerTemplate(
                        Math.toRadians(degrees),
                        road,
                        road,
                        CurbReturn.single(0),
                        apronM,
                        Optional.of(new Roundabout(outerM, islandM, 15)),
                        List.of(),
                        List.of())
                .corner();
    }

    private static AxleLine steer(double aheadM, double halfWidthM) {
        return new AxleLine(aheadM, halfWidthM, 0.32, 0.25);
    }

    private static AxleLine dual(double aheadM, double halfWidthM) {
        return new AxleLine(aheadM, halfWidthM, 0.66, 0.25);
    }

    static TurningCombination tractorAlone() {
        return new TurningCombination(
                List.of(new TurningUnit(5.8, 0)), List.of(tractorPlan()), Math.toRadians(38), 6, List.of());
    }

    private static PlanUnit tractorPlan() {
        return new PlanUnit(
                UnitName.TRACTOR,
                List.of(steer(5.8, 1.22), dual(0.65, 1.22), dual(-0.65, 1.22)),
                List.of(new Body(UnitPart.BODY.of(UnitName.TRACTOR), -1.6, 6.95, 1.27)));
    }

    /** Tractor and lowbed; a booster of the length given behind, or none when it is zero. */
    static TurningCombination lowbed(double trailerM, double boosterM) {
        PlanUnit trailer = new PlanUnit(
                UnitName.TRAILER,
                List.of(dual(1.38, 1.28), dual(0, 1.28), dual(-1.38, 1.28)),
                List.of(new Body(UnitPart.BODY.of(UnitName.TRAILER), -2.1, trailerM + 0.5, 1.3)));
        if (boosterM == 0) {
            return new TurningCombination(
                    List.of(new TurningUnit(5.8, -0.3), new TurningUnit(trailerM, 0)),
                    List.of(tractorPlan(), trailer),
                    Math.toRadians(38),
                    6,
                    List.of(Math.toRadians(85)));
        }
        return new TurningCombination(
                List.of(new TurningUnit(5.8, -0.3), new TurningUnit(trailerM, 2.2), new TurningUnit(boosterM, 0)),
                List.of(
                        tractorPlan(),
                        trailer,
                        new PlanUnit(
                                UnitName.BOOSTER,
                                List.of(dual(0, 1.28)),
                                List.of(new Body(UnitPart.BODY.of(UnitName.BOOSTER), -0.6, boosterM, 1.25)))),
                Math.toRadians(38),
                6,
                List.of(Math.toRadians(85), Math.toRadians(40)));
    }
}
