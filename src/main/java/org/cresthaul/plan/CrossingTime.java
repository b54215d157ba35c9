package org.cresthaul.plan;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.CrossingTraffic.Warning;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * A rail crossing in time: from a stop at the stop line until the rear has cleared, for the configuration the plan has
 * there. Times are seconds, lengths meters; null stands for "not known".
 *
 * @param clearSeconds from the stop until the rear is clear of the tracks
 * @param warning what announces a train; null when nobody knows
 * @param tracks how many there are
 * @param warningSeconds the least warning before a train arrives; null without active devices
 * @param reserveNeededSeconds how long before a train the rear must be clear, for {@code fits}
 * @param reserveSeconds how long it is, by the least warning or by what is seen of the track; negative when too short
 * @param fits true when the reserve is there, false when not, null when not known
 * @param storageM room beyond the tracks before the next stop line or junction; null when not known
 * @param storageNeededM what the combination needs there
 * @param storageFits likewise
 * @param sightNeededM how far along the track must be seen for that reserve, at the train speed given; null without it
 * @param sightM how far it is seen
 * @param advice what to do, one sentence each; the railroad's number is on the blue sign
 */
public record CrossingTime(
        String hazard,
        String name,
        String crossingNumber,
        String configuration,
        @Rounded(Rounding.LENGTH_UP) double lengthM,
        @Rounded(Rounding.LENGTH_UP) double spanM,
        @Rounded(Rounding.TIME_UP) double clearSeconds,
        Warning warning,
        Integer tracks,
        Double warningSeconds,
        double reserveNeededSeconds,
        @Rounded(Rounding.TIME_DOWN) Double reserveSeconds,
        Boolean fits,
        Double storageM,
        @Rounded(Rounding.LENGTH_UP) double storageNeededM,
        Boolean storageFits,
        @Rounded(Rounding.SIGHT_UP) Double sightNeededM,
        Double sightM,
        List<Sentence> advice) {
    public CrossingTime {
        advice = List.copyOf(advice);
    }
}
