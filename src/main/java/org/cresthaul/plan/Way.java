package org.cresthaul.plan;

import java.util.List;

/**
 * A sequence of configurations.
 *
 * @param configurations one for each segment
 * @param seconds of changes and slow passages
 * @param changes how often it changes
 */
public record Way(List<Integer> configurations, long seconds, int changes) {
    public Way {
        configurations = List.copyOf(configurations);
    }
}
