package org.cresthaul.posture;

/** What holds up the middle of an axle, for the independent check. */
public interface WheelGround {
    /** Height of the middle of an axle with wheels of a radius, over {@code x}. */
    double wheelCenterM(double x, double radiusM);
}
