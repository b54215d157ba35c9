package org.cresthaul.turning;

import java.util.Comparator;
import java.util.List;
import org.cresthaul.geometry.Finite;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * The best way round a corner that was found: from every unit straight behind the other on the approach until every
 * unit is straight on the exit again, with all that is passed over or by on the way. What is not found by the search is
 * not shown to be impossible. The same question gives the same answer.
 *
 * @param line how it is steered
 * @param path of the steer axle's middle
 * @param track the combination on it, every {@link Following#STATE_M}
 * @param combination what was driven round
 * @param steering where steering begins and ends, and what it does between
 * @param gaps the least room of every unit's tires, bodies and low parts when the line is driven as it is; negative: it
 *     encroaches
 * @param band the least room with the turn begun as early or as late as was asked: no more than the least gap. A line
 *     that has no room itself is not held against a driver who strays from it: its band is its least gap
 * @param firm the same without low parts
 * @param escorts whether opposing lanes were free to use
 * @param withinLimits whether steering and couplings allow it
 * @param keepsSides whether islands are passed on the side the road leads past them
 * @param usesOpposing whether some tire or body is on an opposing lane; only with escorts
 */
public record CornerFit(
        SteeredLine line,
        LeadPath path,
        Track track,
        TurningCombination combination,
        Steering steering,
        List<Gap> gaps,
        Band band,
        Band firm,
        boolean escorts,
        boolean withinLimits,
        boolean keepsSides,
        boolean usesOpposing) {
    /**
     * The least room of one unit's tires, bodies or low parts.
     *
     * @param unit index into the chain
     * @param valueM negative: so far it is where it must not be
     * @param xM yM the place of the part, in the corner's frame
     * @param stationM of the steer axle along the path
     */
    public record Gap(
            int unit,
            PartOfUnit part,
            Side side,
            Against against,
            double valueM,
            double xM,
            double yM,
            double stationM) {}

    /**
     * The least room of several beginnings.
     *
     * @param lateM at what lateness of the turn-in that is, meters; negative: early
     */
    public record Band(double roomM, double lateM) {
        Band orLess(double room, double late) {
            return room < roomM ? new Band(room, late) : this;
        }
    }

    /**
     * What is wanted of a line.
     *
     * @param requiredM room to be clear: kept with the turn begun early and late
     * @param freeM room at which contact can be excluded, on the line itself
     * @param lateM how early or late the turn may be begun
     */
    public record Wanted(double requiredM, double freeM, double lateM) {
        public Wanted {
            Finite.requireAtLeast("requiredM", freeM, requiredM);
            Finite.requireAtLeast("lateM", 0, lateM);
        }
    }

    /**
     * The steering of a line.
     *
     * @param fromM toM where the front wheels first and last turn, meters along the path
     * @param offsetInM of the line on the approach, from its center point, positive to the left
     * @param offsetOutM the same on the exit
     */
    public record Steering(double fromM, double toM, double offsetInM, double offsetOutM) {}

    /** Figures are told from states this far apart, meters. */
    private static final double FIGURES_M = 0.5;
    /** Bends shrink by e for every length of a unit: after so many they move no place of it by half a millimeter. */
    private static final double SETTLED_LENGTHS = 10;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    public CornerFit {
        gaps = List.copyOf(gaps);
    }

    /** The best way round that is found. */
    public static CornerFit of(CornerSpace space, TurningCombination combination, List<LowPart> low, Wanted wanted) {
        return of(space, combination, low, wanted, List.of());
    }

    /**
     * The same, begun with lines that were found in answer to nearly the same question.
     *
     * @param near ways round the same corner with the same combination
     */
    public static CornerFit of(
            CornerSpace space, TurningCombination combination, List<LowPart> low, Wanted wanted, List<CornerFit> near) {
        return new CornerSearch(space, combination, low, wanted)
                .best(near.stream().map(CornerFit::line).toList());
    }

    /** This way round with other low parts, in the same space and with the same wanted of it. */
    public CornerFit with(CornerSpace space, List<LowPart> low, Wanted wanted) {
        return new CornerSearch(space, combination, low, wanted).judgedAgain(this);
    }

    /** The least room with the turn begun early or late. */
    public double roomM() {
        return band.roomM;
    }

    /** At what lateness of the turn-in that is. */
    public double lateM() {
        return band.lateM;
    }

    /** The least room of all on the line itself. */
    public Gap tightest() {
        return gaps.stream().min(Comparator.comparingDouble(Gap::valueM)).orElseThrow();
    }

    /** Whether steering, couplings and islands let it be driven. */
    public boolean canBeDriven() {
        return withinLimits && keepsSides;
    }

    /**
     * How far the combination swings and trails on it: from its own length before the front wheels turn to where no
     * bend is left that could be seen. Stations are along that piece of the path.
     */
    public TurningFigures figures() {
        double longest = combination.chain().stream()
                .mapToDouble(TurningUnit::hitchToAxleM)
                .max()
                .orElseThrow();
        LeadPath turn = line.path(combination.lengthM(), SETTLED_LENGTHS * longest);
        return TurningFigures.of(Following.along(combination.chain(), turn, FIGURES_M), combination);
    }

    /** The state of the track nearest to a station of the path. */
    public int stateAt(double stationM) {
        int state = 0;
        while (state + 1 < track.size()
                && Math.abs(track.stationM(state + 1) - stationM) <= Math.abs(track.stationM(state) - stationM)) {
            state++;
        }
        return state;
    }

    /** The path of the lead point as a line. */
    public LineString leadLine() {
        Coordinate[] at = new Coordinate[track.size()];
        for (int i = 0; i < at.length; i++) {
            at[i] = new Coordinate(track.leadXM(i), track.leadYM(i));
        }
        return GEOMETRY.createLineString(at);
    }
}
