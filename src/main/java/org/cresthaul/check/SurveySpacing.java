package org.cresthaul.check;

import java.util.List;
import org.cresthaul.check.Surroundings.Lane;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;

/**
 * Whether a road was surveyed closely enough to call anything there clear: what rises between two points stays unseen.
 * The distances are common practice, without a source. Each answer is a list of reasons why not, in words.
 */
final class SurveySpacing {
    /** Points farther apart than this near a track are too far apart, meters. */
    private static final double CLOSE_TO_TRACK_M = 3.0;
    /** The same near the point of a dip or crest: ten feet, meters. */
    private static final double CLOSE_M = 3.05;
    /** How far from a track points must be that close, and the survey must reach, meters. */
    private static final double NEAR_TRACK_M = 6.0;
    /** The same from the point of a dip or crest, whose highest or lowest place nobody marked to the foot, meters. */
    private static final double NEAR_HUMP_M = 15.0;
    /**
     * Farther apart than this points are too far anywhere on a dip or crest, or under a structure, meters: on a curve
     * of 260 m radius the chord of 10 m hides 48 mm (chord² / 8R).
     */
    private static final double APART_M = 10.0;

    private SurveySpacing() {}

    /** At a crossing; near zero when no track is given. */
    static List<Sentence> atTracks(List<RoadProfile> lines, List<Double> tracksM) {
        List<Double> tracks = tracksM.isEmpty() ? List.of(0.0) : tracksM;
        boolean coarse = lines.stream()
                .anyMatch(line ->
                        tracks.stream().anyMatch(track -> isCoarse(line, track, NEAR_TRACK_M, CLOSE_TO_TRACK_M)));
        return coarse ? List.of(Sentence.of(Code.WHY_TRACKS_APART)) : List.of();
    }

    /** At a dip or crest. */
    static List<Sentence> onRoad(List<RoadProfile> lines) {
        if (lines.stream().anyMatch(line -> isCoarse(line, 0, NEAR_HUMP_M, CLOSE_M))) {
            return List.of(Sentence.of(Code.WHY_HUMP_APART));
        }
        return lines.stream().anyMatch(line -> isApart(line, line.startM(), line.endM()))
                ? List.of(Sentence.of(Code.WHY_ROAD_APART))
                : List.of();
    }

    /**
     * Under a structure: its own extent and the wheels that stand up to the chord of {@link #NEAR_HUMP_M} beside it.
     */
    static List<Sentence> under(List<Lane> lanes) {
        boolean apart = lanes.stream().anyMatch(lane -> {
            Soffit over = lane.soffit().orElseThrow();
            return isApart(lane.line(), over.startM() - NEAR_HUMP_M, over.endM() + NEAR_HUMP_M);
        });
        return apart ? List.of(Sentence.of(Code.WHY_UNDER_APART)) : List.of();
    }

    /** Whether two neighboring points near a place are too far apart, or the survey ends near it. */
    private static boolean isCoarse(RoadProfile line, double placeM, double nearM, double closeM) {
        for (int i = 1; i < line.size(); i++) {
            boolean near = line.distanceM(i) > placeM - nearM && line.distanceM(i - 1) < placeM + nearM;
            if (near && line.distanceM(i) - line.distanceM(i - 1) > closeM) {
                return true;
            }
        }
        return line.startM() > placeM - nearM || line.endM() < placeM + nearM;
    }

    private static boolean isApart(RoadProfile line, double fromM, double toM) {
        for (int i = 1; i < line.size(); i++) {
            boolean within = line.distanceM(i) > fromM && line.distanceM(i - 1) < toM;
            if (within && line.distanceM(i) - line.distanceM(i - 1) > APART_M) {
                return true;
            }
        }
        return false;
    }
}
