package org.cresthaul.posture;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.PairedPath;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.RolledProfile;
import org.cresthaul.road.WheelPath;

/**
 * The ground under the wheels: one line that all of them run on, or a road with left and right wheels on lines of their
 * own. Keeps the path of every axle asked for so far. Safe to share.
 */
public final class WheelPaths {
    private final RoadProfile line;
    /** Null where all wheels run on one line. */
    private final CrossSection road;

    private final AxleTracks tracks;
    private final double drivenRightM;
    private final Map<Double, RolledProfile> byRadius = new ConcurrentHashMap<>();
    private final Map<Side, RolledProfile> bySide = new ConcurrentHashMap<>();
    private final Map<Axled, PairedPath> byAxle = new ConcurrentHashMap<>();

    private record Side(double radiusM, double rightM) {}

    private record Axled(double radiusM, double halfM) {}

    public WheelPaths(RoadProfile line) {
        this.line = line;
        road = null;
        tracks = null;
        drivenRightM = 0;
    }

    /** With the middle of the combination driven so far to the right of the road's own line. */
    public WheelPaths(CrossSection road, AxleTracks tracks, double drivenRightM) {
        this.road = road;
        this.tracks = tracks;
        this.drivenRightM = drivenRightM;
        line = road.at("middle", drivenRightM);
    }

    /** Under the middle of the combination. */
    public RoadProfile line() {
        return line;
    }

    public AxleTracks tracks() {
        return tracks;
    }

    /** Path of an axle's middle. */
    public WheelPath rolled(double radiusM, AxleKind kind) {
        if (road == null) {
            return byRadius.computeIfAbsent(radiusM, r -> new RolledProfile(line, r));
        }
        return byAxle.computeIfAbsent(
                new Axled(radiusM, tracks.halfM(kind)),
                a -> new PairedPath(side(radiusM, kind, -1), side(radiusM, kind, 1)));
    }

    /** Path of the wheels of one side, +1 the right; only on a road. */
    public RolledProfile side(double radiusM, AxleKind kind, int side) {
        return beside(radiusM, side * tracks.halfM(kind));
    }

    /** Path of a wheel so far to the right of the combination's middle; only on a road. */
    public RolledProfile beside(double radiusM, double rightM) {
        return bySide.computeIfAbsent(
                new Side(radiusM, drivenRightM + rightM),
                s -> new RolledProfile(road.at("wheels", s.rightM), s.radiusM));
    }
}
