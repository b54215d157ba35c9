package org.cresthaul.rig;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;

/** Rigid, on two axles, its underside straight between them; the trailer stays far above and never counts. */
public final class TwoWheels {
    private static final Uncertainty NONE = new Uncertainty(0, "invented: exact");

    private TwoWheels() {}

    public static Rig of(double wheelbaseM, double undersideM) {
        Tractor tractor = new Tractor(
                new Axle(0, 0.1),
                new AxleGroup(List.of(new Axle(-wheelbaseM, 0.1)), 0.1, 0.1),
                new FramePoint(-wheelbaseM / 2, 2),
                level(-wheelbaseM, 0, undersideM),
                level(-wheelbaseM, 0, undersideM + 0.1));
        Trailer trailer = new Trailer(
                0,
                new FramePoint(-1, 2),
                new FramePoint(-1.5, 2),
                new AxleGroup(List.of(new Axle(-2, 0.1)), 0.5, 0.5),
                0,
                LiftAxles.NONE,
                0,
                0,
                0,
                level(-2, 0, 3),
                level(-2, 0, 3.2),
                List.of(),
                Optional.empty());
        LevelStance stance = new LevelStance("two wheels", tractor, trailer, Optional.empty());
        return new Rig("Two wheels", "invented", NONE, NONE, List.of(new Notch("1", 0)), List.of(stance));
    }

    private static Outline level(double rearXM, double frontXM, double hM) {
        return new Outline(List.of(new FramePoint(rearXM, hM), new FramePoint(frontXM, hM)));
    }
}
