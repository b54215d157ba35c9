package org.cresthaul.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.LoadCase;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxle;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.rig.Weights;

/** The combination in its level stance as outlines and wheels, x in the tractor's frame. */
final class LevelDrawing {
    private final LevelStance stance;
    private final LoadCase loadCase;
    /** The piece that may stand elsewhere than the trailer's outlines have it, as declared. */
    private final Optional<Weights.Piece> declared;

    private final double trailerShiftM;

    LevelDrawing(LevelStance stance, LoadCase loadCase, Optional<Weights.Piece> declared) {
        this.stance = stance;
        this.loadCase = loadCase;
        this.declared = declared;
        trailerShiftM = stance.trailerShiftM();
    }

    private double boosterShiftM(int index) {
        Booster booster = stance.boosters().get(index);
        return trailerShiftM
                + (loadCase.booster() == BoosterState.CLOSE_COUPLED
                        ? booster.closeCoupledAxleXM().orElseThrow()
                                - booster.onlyAxle().xM()
                        : stance.boosterShiftM(index));
    }

    /** Those that stand on the road; only while one trails others do behind it. */
    private List<Booster> standingBoosters() {
        return switch (loadCase.booster()) {
            case NONE, CARRIED -> List.of();
            case CLOSE_COUPLED, TRAILING -> stance.boosters();
        };
    }

    List<LoadsView.Outlines> units() {
        List<LoadsView.Outlines> units = new ArrayList<>();
        units.add(new LoadsView.Outlines(
                "tractor",
                points(stance.tractor().underside(), 0),
                points(stance.tractor().topside(), 0),
                List.of()));
        for (int i = 0; i < stance.jeeps().size(); i++) {
            Jeep jeep = stance.jeeps().get(i);
            units.add(new LoadsView.Outlines(
                    UnitName.jeep(i + 1).word(),
                    points(jeep.underside(), stance.jeepShiftM(i)),
                    points(jeep.topside(), stance.jeepShiftM(i)),
                    List.of()));
        }
        Trailer trailer = stance.trailer();
        List<List<List<Double>>> load = new ArrayList<>();
        trailer.load().forEach(o -> load.add(points(o, trailerShiftM + movedM(o))));
        if (loadCase.booster() == BoosterState.CARRIED) {
            stance.booster().orElseThrow().carried().ifPresent(o -> load.add(points(o, trailerShiftM)));
        }
        units.add(new LoadsView.Outlines(
                "trailer", points(trailer.underside(), trailerShiftM), points(trailer.topside(), trailerShiftM), load));
        List<Booster> boosters = standingBoosters();
        for (int i = 0; i < boosters.size(); i++) {
            units.add(new LoadsView.Outlines(
                    UnitName.booster(i + 1).word(),
                    points(boosters.get(i).underside(), boosterShiftM(i)),
                    points(boosters.get(i).topside(), boosterShiftM(i)),
                    List.of()));
        }
        return units;
    }

    /** How far the question has moved an outline of the load. */
    private double movedM(Outline outline) {
        if (declared.isEmpty() || !declared.get().outline().map(outline::equals).orElse(false)) {
            return 0;
        }
        return stance.weights().orElseThrow().pieces().stream()
                .filter(p -> p.name().equals(declared.get().name()))
                .mapToDouble(p -> p.at().xM() - declared.get().at().xM())
                .findFirst()
                .orElse(0);
    }

    private static List<List<Double>> points(Outline outline, double shiftM) {
        return outline.points().stream()
                .map(p -> List.of(DrawnLengths.near(p.xM() + shiftM), DrawnLengths.near(p.hM())))
                .toList();
    }

    List<LoadsView.Wheel> wheels() {
        List<LoadsView.Wheel> wheels = new ArrayList<>();
        add(wheels, stance.tractor().steer(), 0);
        stance.tractor().drive().axles().forEach(a -> add(wheels, a, 0));
        for (int i = 0; i < stance.jeeps().size(); i++) {
            double shiftM = stance.jeepShiftM(i);
            stance.jeeps().get(i).axles().axles().forEach(a -> add(wheels, a, shiftM));
        }
        List<Axle> axles = stance.trailer().axles().axles();
        stance.trailer().down(loadCase.lift()).forEach(a -> add(wheels, a, trailerShiftM));
        List<Booster> boosters = standingBoosters();
        for (int i = 0; i < boosters.size(); i++) {
            double shiftM = boosterShiftM(i);
            boosters.get(i).axles().axles().forEach(a -> add(wheels, a, shiftM));
        }
        for (LiftAxle up : stance.trailer().lift().up(loadCase.lift())) {
            Axle lifted = axles.get(up.index());
            wheels.add(new LoadsView.Wheel(
                    DrawnLengths.near(lifted.xM() + trailerShiftM),
                    DrawnLengths.near(lifted.radiusM() + up.gapM()),
                    DrawnLengths.near(lifted.radiusM()),
                    true,
                    null));
        }
        return wheels;
    }

    private static void add(List<LoadsView.Wheel> wheels, Axle axle, double shiftM) {
        wheels.add(new LoadsView.Wheel(
                DrawnLengths.near(axle.xM() + shiftM),
                DrawnLengths.near(axle.radiusM()),
                DrawnLengths.near(axle.radiusM()),
                false,
                wheels.size()));
    }
}
