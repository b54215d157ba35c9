package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.route.CrossingTraffic;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;

/**
 * Rail crossings in time, for a vehicle that moves off from a stop (AASHTO, A Policy on Geometric Design of Highways
 * and Streets, railroad-highway grade crossings, case of a stopped vehicle; Highway-Rail Crossing Handbook; formula and
 * constants as commonly quoted):
 *
 * <pre>T = J + V/a + (L + 2D + W − d_a)/V,  d_a = V²/2a</pre>
 *
 * with J looking both ways and getting under way, V the speed in the lowest gear, a the acceleration up to it, L the
 * length of the vehicle, D from the stop line to the nearest rail and from the farthest rail to where the rear is
 * clear, W between the outermost rails. V and a are the source's for a standard heavy truck: a combination that crawls
 * slower counts with its own crawling speed.
 */
public final class CrossingTimes {
    static final double FOOT_M = 0.3048;
    /** J, seconds. */
    static final double LOOK_S = 2;
    /** V of a standard heavy truck: 8.8 ft/s. */
    static final double TRUCK_MPS = 8.8 * FOOT_M;
    /** a: 1.47 ft/s². */
    static final double ACCELERATION_MPS2 = 1.47 * FOOT_M;
    /** Left over before a train, at the least: a stated reserve, this program's choice. */
    public static final double RESERVE_S = 5;
    /** D: 15 ft. */
    static final double FREE_OF_RAIL_M = 15 * FOOT_M;
    /** W of a single track: 5 ft. */
    static final double TRACK_M = 5 * FOOT_M;
    /** The source takes 1.47 ft/s for a mile per hour, which is 0.2 % more than it is: to the safe side. */
    static final double MPH_AS_QUOTED = 1.47 * FOOT_M / 0.44704;

    private static final double HAIR = 1e-6;

    private CrossingTimes() {}

    /**
     * From a stop at the stop line until the rear is clear of the tracks, seconds.
     *
     * @param lengthM of the combination, meters
     * @param spanM between the outermost rails, meters
     * @param crawlMps the fastest it may go over a crossing, meters per second, positive
     */
    public static double clearingS(double lengthM, double spanM, double crawlMps) {
        double v = speedMps(crawlMps);
        double startM = v * v / (2 * ACCELERATION_MPS2);
        double wayM = lengthM + 2 * FREE_OF_RAIL_M + spanM;
        if (!(v > 0) || !(wayM >= startM)) {
            throw new IllegalArgumentException(v + " m/s is not reached within " + wayM + " m");
        }
        return LOOK_S + v / ACCELERATION_MPS2 + (wayM - startM) / v;
    }

    /** What counts as V: the standard truck's speed, or the combination's own crawl where that is slower. */
    static double speedMps(double crawlMps) {
        return Math.min(TRUCK_MPS, crawlMps);
    }

    /** W: one track, and what the outermost ones are apart. A crossing without recorded tracks counts as one. */
    static double spanM(RailCrossing crossing) {
        List<Double> tracks = crossing.tracksM();
        return TRACK_M + (tracks.isEmpty() ? 0 : tracks.get(tracks.size() - 1) - tracks.get(0));
    }

    /** From the hazard's point to the first rail of a crossing, along travel, meters. */
    static double nearRailM(RailCrossing crossing) {
        List<Double> tracks = crossing.tracksM();
        return (tracks.isEmpty() ? 0 : tracks.get(0)) - TRACK_M / 2;
    }

    /** To its last rail. */
    static double farRailM(RailCrossing crossing) {
        List<Double> tracks = crossing.tracksM();
        return (tracks.isEmpty() ? 0 : tracks.get(tracks.size() - 1)) + TRACK_M / 2;
    }

    /** How far along the track a train is when it takes that long to come, meters. */
    static double sightM(double trainMps, double clearingS) {
        return MPH_AS_QUOTED * trainMps * clearingS;
    }

    /**
     * One crossing in one configuration. Nothing fits that is not known: neither the time, without the warning and the
     * tracks, nor the room beyond.
     *
     * @param configuration key in the report
     * @param lengthM of the combination in it, meters
     * @param crawlMps crawling speed, meters per second
     */
    public static CrossingTime of(RailCrossing crossing, String configuration, double lengthM, double crawlMps) {
        CrossingTraffic traffic = crossing.traffic();
        double spanM = spanM(crossing);
        double clearS = clearingS(lengthM, spanM, crawlMps);
        OptionalDouble sightNeededM = traffic.trainMps().stream()
                .map(v -> sightM(v, clearS + RESERVE_S))
                .findFirst();
        OptionalDouble reserveS = reserveS(traffic, clearS);
        double storageNeededM = lengthM + FREE_OF_RAIL_M;
        Boolean fits = fits(crossing, reserveS);
        Boolean storageFits = storageFits(traffic, storageNeededM);
        return new CrossingTime(
                crossing.place().id(),
                crossing.place().name(),
                crossing.crossingNumber().orElse(null),
                configuration,
                lengthM,
                spanM,
                clearS,
                traffic.warning().orElse(null),
                crossing.tracksM().isEmpty()
                        ? null
                        : (Integer) crossing.tracksM().size(),
                boxed(traffic.leastWarningS()),
                RESERVE_S,
                reserveS.isPresent() ? (Double) reserveS.getAsDouble() : null,
                fits,
                boxed(traffic.storageM()),
                storageNeededM,
                storageFits,
                sightNeededM.isPresent() ? (Double) sightNeededM.getAsDouble() : null,
                boxed(traffic.sightM()),
                advice(crossing, crawlMps, fits, storageFits));
    }

    /** Whether both fit, without the rest of {@link #of}: a plan asks it of every configuration. */
    static boolean isShown(RailCrossing crossing, double lengthM, double crawlMps) {
        double clearS = clearingS(lengthM, spanM(crossing), crawlMps);
        return Boolean.TRUE.equals(fits(crossing, reserveS(crossing.traffic(), clearS)))
                && Boolean.TRUE.equals(storageFits(crossing.traffic(), lengthM + FREE_OF_RAIL_M));
    }

    private static Boolean storageFits(CrossingTraffic traffic, double neededM) {
        return traffic.storageM().isPresent() ? (Boolean) (traffic.storageM().getAsDouble() >= neededM - HAIR) : null;
    }

    /**
     * What is left when the rear is clear: of the warning where a train is announced, of the train's way over what is
     * seen of the track where it is not. Empty when either is not known.
     */
    private static OptionalDouble reserveS(CrossingTraffic traffic, double clearS) {
        if (traffic.leastWarningS().isPresent()) {
            return OptionalDouble.of(traffic.leastWarningS().getAsDouble() - clearS);
        }
        if (traffic.warning().isEmpty()
                || traffic.sightM().isEmpty()
                || traffic.trainMps().orElse(0) <= 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(traffic.sightM().getAsDouble()
                        / (MPH_AS_QUOTED * traffic.trainMps().getAsDouble())
                - clearS);
    }

    private static Boolean fits(RailCrossing crossing, OptionalDouble reserveS) {
        if (reserveS.isEmpty()) {
            return null;
        }
        boolean inTime = reserveS.getAsDouble() >= RESERVE_S;
        // Too slow for one track is too slow for more; in time for one says nothing of more.
        return inTime && crossing.tracksM().isEmpty() ? null : (Boolean) inTime;
    }

    private static List<Sentence> advice(RailCrossing crossing, double crawlMps, Boolean fits, Boolean storageFits) {
        List<Sentence> advice = new ArrayList<>();
        CrossingTraffic traffic = crossing.traffic();
        if (fits == null) {
            advice.add(Sentence.of(Code.ADVICE_UNKNOWN).with("missing", Sentence.listed(missing(crossing), ", ")));
        } else if (!fits) {
            advice.add(
                    Sentence.of(traffic.leastWarningS().isPresent() ? Code.ADVICE_LATE_WARNING : Code.ADVICE_LATE_SIGHT)
                            .figure("reserve", (int) RESERVE_S + " s"));
        }
        if (fits == null || !fits) {
            advice.add(crossing.crossingNumber()
                    .map(n -> Sentence.of(Code.ADVICE_FLAGGING_NUMBER).with("number", n))
                    .orElse(Sentence.of(Code.ADVICE_FLAGGING)));
        }
        if (storageFits == null) {
            advice.add(Sentence.of(Code.ADVICE_MEASURE_ROOM));
        } else if (!storageFits) {
            advice.add(Sentence.of(Code.ADVICE_ROOM_SHORT));
        }
        advice.add((crawlMps < TRUCK_MPS
                        ? Sentence.of(Code.ADVICE_TIMED_CRAWL).figure("crawl", speed(crawlMps))
                        : Sentence.of(Code.ADVICE_TIMED))
                .figure("truck", speed(TRUCK_MPS)));
        return advice;
    }

    /** What nobody knows of the time at a crossing. */
    private static List<Sentence> missing(RailCrossing crossing) {
        CrossingTraffic traffic = crossing.traffic();
        List<Code> missing = new ArrayList<>();
        if (crossing.tracksM().isEmpty()) {
            missing.add(Code.MISSING_TRACKS);
        }
        if (traffic.warning().isEmpty()) {
            missing.add(Code.MISSING_WARNING);
        } else if (traffic.leastWarningS().isEmpty()) {
            if (traffic.trainMps().isEmpty()) {
                missing.add(Code.MISSING_TRAINS);
            }
            if (traffic.sightM().isEmpty()) {
                missing.add(Code.MISSING_SIGHT);
            }
        }
        return missing.stream().map(Sentence::of).toList();
    }

    private static String speed(double mps) {
        return new Speed(mps).format(UnitSystem.US_CUSTOMARY) + " (" + new Speed(mps).format(UnitSystem.METRIC) + ")";
    }

    private static Double boxed(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }
}
