package org.cresthaul.clearance.bound;

/**
 * The gap needed at each point of one unit, over one stretch of steer positions, meters. Along a segment it bulges
 * downward, as lever weights do, so that the ends of any part of it bound it.
 */
public interface Need {
    /** At a vertex that moves from one distance to another. */
    double atVertex(int i, double xA, double xB);

    /** At the foot of a raised tire, likewise. */
    double atTire(double xA, double xB);

    /** The most along a whole segment, without what the ground itself may stray at the place: a first, coarse bound. */
    double alongSegment(int k);

    /** The same at one place of a segment, a share of the way from its rear end. */
    double onSegment(int k, double t);

    /** The most between two places of a segment. */
    default double onSegment(int k, double t, double u) {
        return Math.max(onSegment(k, t), onSegment(k, u));
    }

    /** How far the ground itself may stray anywhere between two distances. */
    double beyondSurvey(double xA, double xB);
}
