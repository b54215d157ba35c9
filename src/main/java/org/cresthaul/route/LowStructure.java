package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.geometry.Finite;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;

/**
 * Something low over the road: a bridge, a pipe rack, a gantry. Its height is known as a soffit line above the datum of
 * the road lines, or as one clearance above the road over an extent, or not at all.
 *
 * @param soffit the underside as a line; then there are road lines as well, above the same datum
 * @param clearanceM least height above the road, straight up, meters
 * @param extent where along the road the clearance holds
 * @param measured how the height was come by
 * @param reportedBy who says so, of a reported height
 */
public record LowStructure(
        HazardPlace place,
        Optional<Soffit> soffit,
        OptionalDouble clearanceM,
        Optional<Extent> extent,
        Measured measured,
        List<RoadProfile> lines,
        Optional<Uncertainty> survey,
        Optional<String> reportedBy)
        implements Overhead {
    /** How a height was come by. */
    public enum Measured {
        SURVEYED("surveyed"),
        POSTED("posted"),
        /** Somebody else says so, and nobody on this haul has seen it: never clear, whatever the number. */
        REPORTED("reported"),
        /** The least there is in heat and ice, by whoever owns it. */
        DECLARED("declared"),
        UNKNOWN("unknown");

        private final String word;

        Measured(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }

        /** The one of a word of the file; unknown for any other. */
        public static Measured of(String word) {
            return Stream.of(values())
                    .filter(m -> m.word.equals(word))
                    .findFirst()
                    .orElse(UNKNOWN);
        }
    }

    /**
     * A stretch of road under a structure.
     *
     * @param fromM meters along travel from the hazard's point
     * @param toM meters, more than {@code fromM}
     */
    public record Extent(double fromM, double toM) {
        public Extent {
            Finite.require("fromM", fromM);
            Finite.require("toM", toM);
            if (toM <= fromM) {
                throw new IllegalArgumentException("an extent runs forward: from " + fromM + " to " + toM + " m");
            }
        }
    }

    /** A height that nobody else reports. */
    public LowStructure(
            HazardPlace place,
            Optional<Soffit> soffit,
            OptionalDouble clearanceM,
            Optional<Extent> extent,
            Measured measured,
            List<RoadProfile> lines,
            Optional<Uncertainty> survey) {
        this(place, soffit, clearanceM, extent, measured, lines, survey, Optional.empty());
    }

    public LowStructure {
        lines = List.copyOf(lines);
        Hazard.requireSound(lines, survey);
        if (soffit.isPresent() && clearanceM.isPresent()) {
            throw new IllegalArgumentException("a structure has a soffit or a clearance, not both");
        }
        if (soffit.isPresent() && lines.isEmpty()) {
            throw new IllegalArgumentException("a soffit means something only above road lines of the same datum");
        }
        if (clearanceM.isPresent() != extent.isPresent()) {
            throw new IllegalArgumentException("a clearance needs its extent, and only it has one");
        }
        if (measured == Measured.SURVEYED && clearanceM.isPresent() && survey.isEmpty()) {
            throw new IllegalArgumentException("a surveyed clearance needs the accuracy of its survey");
        }
        if (measured == Measured.REPORTED != reportedBy.isPresent()) {
            throw new IllegalArgumentException("a reported height says who reports it, and no other does");
        }
        clearanceM.ifPresent(c -> Finite.requireAtLeast("clearanceM", 0, c));
    }

    @Override
    public HazardKind kind() {
        return HazardKind.LOW_STRUCTURE;
    }

    @Override
    public LowStructure height() {
        return this;
    }

    @Override
    public LowStructure withSurvey(Uncertainty other) {
        return new LowStructure(place, soffit, clearanceM, extent, measured, lines, survey.map(s -> other), reportedBy);
    }

    /** Its least height above the road, straight up, meters; empty when no height is known. */
    public OptionalDouble leastHeightM() {
        if (clearanceM.isPresent() || soffit.isEmpty()) {
            return clearanceM;
        }
        Soffit over = soffit.get();
        double least = Double.POSITIVE_INFINITY;
        for (RoadProfile line : lines) {
            // Between two lines of straight pieces the least lies at a point of one of them.
            for (int i = 0; i < over.size(); i++) {
                least = Math.min(least, over.elevationM(i) - line.heightAt(over.distanceM(i)));
            }
            for (SurveyedPoint p : line.points()) {
                if (p.distanceM() > over.startM() && p.distanceM() < over.endM()) {
                    least = Math.min(least, over.heightAt(p.distanceM()) - p.elevationM());
                }
            }
        }
        return OptionalDouble.of(least);
    }

    /** Whether its height is known in some way; {@link #measured} tells how well. */
    @Override
    public boolean isSurveyed() {
        return soffit.isPresent() || clearanceM.isPresent();
    }
}
