package org.cresthaul.clearance;

import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftAxles;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;

/**
 * The body that published clearance rules speak of: rigid, on two axles, with a straight underside and a straight top
 * from axle to axle. Drawn as a tractor with one drive axle; the trailer that every combination has is short and drawn
 * far above the ground and far below any soffit, so that it never counts.
 *
 * <p>The rules put the ends of the wheelbase on the ground; here wheels of {@link #RADIUS_M} do the standing. Each test
 * says what that changes and allows for it in closed form.
 */
record TwoWheelBody(LevelStance stance) {
    /** The smallest tire a rig may have, so that what is allowed for is least. */
    static final double RADIUS_M = 0.1;

    static final Setting SETTING = new Setting(LiftState.DOWN, BoosterState.NONE, 0, 0, 0);

    /** Far enough never to be the nearest. */
    private static final double OUT_OF_THE_WAY_M = 30;

    /**
     * A body with its steer axle at x = 0.
     *
     * @param wheelbaseM between the axles
     * @param undersideM height of the underside above level ground
     * @param topM height of the top above level ground
     */
    static TwoWheelBody of(double wheelbaseM, double undersideM, double topM) {
        return of(wheelbaseM, line(-wheelbaseM, 0, undersideM), line(-wheelbaseM, 0, topM));
    }

    static TwoWheelBody of(double wheelbaseM, Outline underside, Outline top) {
        Tractor tractor = new Tractor(
                new Axle(0, RADIUS_M),
                new AxleGroup(List.of(new Axle(-wheelbaseM, RADIUS_M)), 0.1, 0.1),
                new FramePoint(-wheelbaseM / 2, 1),
                underside,
                top);
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-1, 1),
                new FramePoint(-1.5, 1),
                new AxleGroup(List.of(new Axle(-2, RADIUS_M)), 0.5, 0.5),
                0,
                LiftAxles.NONE,
                0,
                0,
                0,
                line(-2, 0, OUT_OF_THE_WAY_M),
                line(-2, 0, -OUT_OF_THE_WAY_M),
                List.of(),
                Optional.empty());
        return new TwoWheelBody(new LevelStance("two wheels", tractor, trailer, Optional.empty()));
    }

    static Outline line(double rearXM, double frontXM, double hM) {
        return new Outline(List.of(new FramePoint(rearXM, hM), new FramePoint(frontXM, hM)));
    }
}
