package org.cresthaul.road;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A corner from above, in meters, in its own frame: any origin, x to the east of it or along the approach, y to the
 * left of x. Geometries are values here: nobody changes them.
 *
 * @param pavement what tires may run on without escorts, as far as own lanes and aprons go
 * @param escorted what they may run on when escorts hold the opposing traffic; contains {@code pavement}. Empty when no
 *     opposing lane may be borrowed
 * @param opposing lanes that no body may overhang unless they are borrowed; may be empty
 * @param obstacles what no body may touch: poles, walls, signs; may be empty
 * @param approach where the combination comes from
 * @param exit where it goes to
 * @param turnRad how far the road turns from approach to exit, positive to the left; a roundabout may turn beyond π
 * @param ground what bodies pass over where they leave the pavement
 * @param guide the way the road is driven, from the approach to the exit, as a line in the corner's frame: it says on
 *     which side islands are passed. Empty when nobody said; islands may then be passed on either side
 * @param onLeft whether one drives on the left here: the opposing lanes are then on the right
 * @param backing whether it is driven backward, from {@code exit} to {@code approach}: wheels that roll forward from
 *     the gate out to the road roll back the same way, so that all here is told of the pull-out
 */
public record Corner(
        Geometry pavement,
        Optional<Geometry> escorted,
        Geometry opposing,
        Geometry obstacles,
        RoadEnd approach,
        RoadEnd exit,
        double turnRad,
        Ground ground,
        Optional<LineString> guide,
        boolean onLeft,
        boolean backing) {
    /**
     * What stands beside the pavement and in it, above the pavement beside it. A height nobody gave is unknown, never
     * zero.
     *
     * @param edgeHeightM of whatever lies beyond the pavement's outer edge: the curb; zero where the ground is flush
     * @param islands raised areas that tires keep off; the pavement does not hold them
     */
    public record Ground(OptionalDouble edgeHeightM, List<Island> islands) {
        public Ground {
            islands = List.copyOf(islands);
        }

        /** Nothing is known of it. */
        public static Ground unknown() {
            return new Ground(OptionalDouble.empty(), List.of());
        }
    }

    /** A median, splitter or middle island: its area, and how high it stands above the pavement beside it, meters. */
    public record Island(Geometry area, OptionalDouble heightM) {}

    /**
     * A cross-section of the road at one end of the corner.
     *
     * @param headingRad direction of travel, counter-clockwise from x
     * @param leftM rightM how far own lanes and shoulder reach to either side of the point, meters, each positive
     *     outward and perhaps negative: a point on the center line has its own lane all on one side
     * @param escortedLeftM escortedRightM the same with the opposing lanes
     */
    public record RoadEnd(
            double xM,
            double yM,
            double headingRad,
            double leftM,
            double rightM,
            double escortedLeftM,
            double escortedRightM) {
        public RoadEnd {
            Finite.require("xM", xM);
            Finite.require("yM", yM);
            Finite.require("headingRad", headingRad);
            if (!(leftM + rightM > 0) || escortedLeftM < leftM || escortedRightM < rightM) {
                throw new IllegalArgumentException("a road end needs a width: " + leftM + " + " + rightM);
            }
        }

        private RoadEnd mirrored() {
            return new RoadEnd(xM, -yM, -headingRad, rightM, leftM, escortedRightM, escortedLeftM);
        }
    }

    /** A corner of which nothing is known beside the pavement, and whose islands may be passed on either side. */
    public Corner(
            Geometry pavement,
            Optional<Geometry> escorted,
            Geometry opposing,
            Geometry obstacles,
            RoadEnd approach,
            RoadEnd exit,
            double turnRad) {
        this(pavement, escorted, opposing, obstacles, approach, exit, turnRad, Ground.unknown(), Optional.empty());
    }

    /** A corner where one drives on the right. */
    public Corner(
            Geometry pavement,
            Optional<Geometry> escorted,
            Geometry opposing,
            Geometry obstacles,
            RoadEnd approach,
            RoadEnd exit,
            double turnRad,
            Ground ground,
            Optional<LineString> guide) {
        this(pavement, escorted, opposing, obstacles, approach, exit, turnRad, ground, guide, false);
    }

    /** A corner that is driven forward. */
    public Corner(
            Geometry pavement,
            Optional<Geometry> escorted,
            Geometry opposing,
            Geometry obstacles,
            RoadEnd approach,
            RoadEnd exit,
            double turnRad,
            Ground ground,
            Optional<LineString> guide,
            boolean onLeft) {
        this(pavement, escorted, opposing, obstacles, approach, exit, turnRad, ground, guide, onLeft, false);
    }

    public Corner {
        Finite.require("turnRad", turnRad);
        if (pavement.isEmpty()
                || !pavement.isValid()
                || !opposing.isValid()
                || !obstacles.isValid()
                || escorted.isPresent() && !escorted.get().isValid()) {
            throw new IllegalArgumentException("a corner's areas must be valid, and its pavement not empty");
        }
    }

    /** Seen in a mirror along x: right and left change places, and so does the side one drives on. */
    public Corner mirrored() {
        AffineTransformation flip = AffineTransformation.scaleInstance(1, -1);
        List<Island> islands = ground.islands.stream()
                .map(i -> new Island(flip.transform(i.area), i.heightM))
                .toList();
        return new Corner(
                flip.transform(pavement),
                escorted.map(flip::transform),
                flip.transform(opposing),
                flip.transform(obstacles),
                approach.mirrored(),
                exit.mirrored(),
                -turnRad,
                new Ground(ground.edgeHeightM, islands),
                guide.map(g -> (LineString) flip.transform(g)),
                !onLeft,
                backing);
    }

    /** The same, backed into from its exit. */
    Corner backed() {
        return new Corner(
                pavement, escorted, opposing, obstacles, approach, exit, turnRad, ground, guide, onLeft, true);
    }
}
