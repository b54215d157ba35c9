package org.cresthaul.exchange.routefile;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.CrossingTraffic.Warning;
import org.cresthaul.units.LengthLimits;

/** Reads what a rail crossing says of its trains and of the room beyond it. Everything may be left out. */
final class CrossingReader {
    static final List<String> WARNINGS =
            Stream.of(Warning.values()).map(Warning::word).toList();
    /** Least and most room beyond the tracks, and sight along them, meters. */
    static final LengthLimits STORAGE = new LengthLimits(0, 5_000);

    static final LengthLimits SIGHT = new LengthLimits(0, 10_000);
    /** Longest warning taken, seconds: ten minutes. */
    static final double MOST_WARNING_S = 600;
    /** Slowest and fastest train taken, meters per second. */
    static final double LEAST_TRAIN_MPS = 1;

    static final double MOST_TRAIN_MPS = 100;

    private CrossingReader() {}

    /** Empty after a problem. */
    static Optional<CrossingTraffic> traffic(JsonFields properties) {
        int before = properties.problems().count();
        Optional<Warning> warning = properties.has("warning")
                ? Optional.of(properties.word("warning", WARNINGS))
                        .flatMap(w -> Stream.of(Warning.values())
                                .filter(v -> v.word().equals(w))
                                .findFirst())
                : Optional.empty();
        OptionalDouble warningS = properties.findDurationS("warningTime");
        if (properties.has("warningTime") && (warning.isEmpty() || warning.get() != Warning.ACTIVE)) {
            properties.problem(
                    "warningTime",
                    "warning-without-devices",
                    "A warning time is given, but no active devices that would give it.",
                    "Add \"warning\": \"active\", or leave the time out.");
        } else if (warningS.isPresent()
                && !(warningS.getAsDouble() >= 1 && warningS.getAsDouble() <= MOST_WARNING_S)
                && !Double.isNaN(warningS.getAsDouble())) {
            properties.problem(
                    "warningTime",
                    "out-of-range",
                    "A warning lasts between 1 s and 10 min.",
                    "Write the least time from its start to the train, such as \"25 s\".");
        }
        OptionalDouble storageM = properties.findLengthM("storage", STORAGE);
        OptionalDouble trainMps = properties.findSpeedMps("trainSpeed", LEAST_TRAIN_MPS, MOST_TRAIN_MPS);
        OptionalDouble sightM = properties.findLengthM("sight", SIGHT);
        return properties.problems().count() == before
                ? Optional.of(new CrossingTraffic(warning, warningS, storageM, trainMps, sightM))
                : Optional.empty();
    }
}
