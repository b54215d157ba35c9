package org.cresthaul.plan;

import java.util.List;

/**
 * A rail crossing in time: from a stop at the stop line until the rear has cleared, for the configuration the plan has there.
 * Times are seconds, lengths metres; null stands for "not known".
 *
 * @param clearSeconds from the stop until the rear is clear of the tracks
 * @param warningSeconds the least warning before a train arrives; null without active devices
 * @param fits true when it clears within the warning with time to spare, false when not, null when not known
 * @param storageM room beyond the tracks before the next stop line or junction; null when not known
 * @param storageNeededM what the combination needs there
 * @param storageFits likewise
 * @param sightNeededM how far along the track must be seen, at the train speed given; null without it
 * @param advice what to do, one sentence each; the railway's number is on the blue sign
 */
public record CrossingTime(
        String hazard,
        String name,
        String crossingNumber,
        String configuration,
        double lengthM,
        double spanM,
        double clearSeconds,
        Double warningSeconds,
        Boolean fits,
        Double storageM,
        double storageNeededM,
        Boolean storageFits,
        Double sightNeededM,
        List<String> advice) {
    public CrossingTime {
        advice = List.copyOf(advice);
    }
}
