package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.cresthaul.clearance.AcrossRoad;
import org.cresthaul.clearance.Passage;
import org.cresthaul.clearance.RoadPlace;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.UncertaintyTerm;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Extent;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.route.Overhead;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RoadHump;
import org.cresthaul.route.SignedHeight;
import org.cresthaul.units.Length;

/**
 * What of a hazard the vertical engine is to judge, and what is known too little about it to call anything clear.
 *
 * @param lines as surveyed, or straight ground under a structure of which only a height is known; none when the hazard
 *     is not surveyed
 * @param lanes what is passed of them: each line by itself, or places across the road between them
 * @param judgesGround whether ground clearance counts here
 * @param surveyM 95 % half-width of a surveyed elevation, meters; zero where nothing was surveyed
 * @param structureM 95 % half-width of a height that was not leveled with the road, meters
 * @param sagM extra gap wanted under a structure whose road profile is not known, meters
 * @param keptM vertical gap that keeps everything away from a wire as far as it asks, meters; zero where there is none
 * @param limits reasons why nothing here may be called clear, in words
 * @param terms the uncertainties that enter, with their sources
 * @param notes further facts for the reader
 */
public record Surroundings(
        List<RoadProfile> lines,
        List<Lane> lanes,
        boolean judgesGround,
        double surveyM,
        double structureM,
        double sagM,
        double keptM,
        List<Sentence> limits,
        List<UncertaintyTerm> terms,
        List<String> notes) {
    /**
     * One wheel-path line, with the structure over it when there is one; or a place across the road, over the ground or
     * under a structure.
     *
     * @param line under the trailer
     */
    public record Lane(RoadProfile line, Optional<Soffit> soffit, Optional<RoadPlace> place) {
        Lane(RoadProfile line, Optional<Soffit> soffit) {
            this(line, soffit, Optional.empty());
        }

        public String name() {
            return place.map(RoadPlace::label).orElse(line.name());
        }
    }

    /**
     * A posted clearance: 3 in either way. What a sign keeps in hand differs: at least 3 in in the United Kingdom
     * (Traffic Signs Manual ch. 4, 7.11), 3 in in Texas (TxDOT sign manual), up to 3 in for frost where the MUTCD holds
     * (2009, 2C.27), maybe nothing. So none of it is counted on, and 3 in are kept against frost or an overlay since.
     * An assumption of this program.
     */
    static final double POSTED_M = 0.0762;

    /**
     * Extra gap wanted under a structure whose road profile is not known: a vehicle whose outer axles are 25 m apart
     * loses 0.3 m on a sag of 260 m radius (chord² / 8R; the 25 m chord is that of Traffic Signs Manual ch. 4, 7.10).
     * An assumption of this program.
     */
    static final double UNKNOWN_SAG_M = 0.30;

    /** The passage over one lane: past the whole survey where ground is judged, else past the structure. */
    public Passage passage(LevelStance stance, Lane lane) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        // Places across one road are passed alike, so that they can share what they have in common.
        for (Lane each : lane.place().isPresent() ? lanes : List.of(lane)) {
            if (each.soffit().isPresent()) {
                from = Math.min(from, each.soffit().get().startM());
                to = Math.max(to, each.soffit().get().endM());
            }
        }
        if (judgesGround) {
            for (RoadProfile line : lane.place().isPresent() ? lines : List.of(lane.line())) {
                from = Math.min(from, line.startM());
                to = Math.max(to, line.endM());
            }
        }
        return lane.place().isPresent()
                ? new Passage(stance, lane.place().get(), from, to)
                : new Passage(stance, lane.line(), from, to);
    }

    /** Whether ground clearance is judged on a lane. */
    public boolean judgesGroundOn(Lane lane) {
        return judgesGround && (lane.place().isEmpty() || lane.soffit().isEmpty());
    }

    /** How much was surveyed, in points of lines and structures. */
    long points() {
        long soffit = lanes.stream()
                .mapToLong(l -> l.soffit().map(Soffit::size).orElse(0))
                .max()
                .orElse(0);
        return lines.stream().mapToLong(l -> l.size() + soffit).sum();
    }

    /** Statutory height of vehicles in most states of the USA: 13 ft 6 in (common practice). */
    private static final double STATUTORY_HEIGHT_M = 4.1148;

    public static Surroundings of(Hazard hazard) {
        if (hazard instanceof RailCrossing crossing) {
            return crossing(crossing);
        }
        if (hazard instanceof OverheadWire wire) {
            return OverWires.of(wire, structure(wire.height(), true));
        }
        if (hazard instanceof LowStructure structure) {
            return structure(structure, false);
        }
        if (hazard instanceof LimitedPlace) {
            throw new IllegalArgumentException(hazard.place().id() + " is judged by loads, not by gaps");
        }
        return road((RoadHump) hazard);
    }

    /**
     * For one combination: across the road where its lines say how they run, with what is too narrowly surveyed for it.
     */
    public static Surroundings of(Hazard hazard, LevelStance stance) {
        Surroundings along = of(hazard);
        List<Sentence> limits = new ArrayList<>(along.limits);
        if (along.judgesGround) {
            SurveyedBand.limit(along.lines, stance).ifPresent(limits::add);
        }
        Optional<CrossSection> road = stance.plan().isPresent() ? CrossSection.of(along.lines) : Optional.empty();
        boolean large = road.isPresent() && road.get().points() > AcrossRoad.MOST_POINTS;
        if (large) {
            limits.add(Sentence.of(Code.WHY_MANY_POINTS).with("count", AcrossRoad.MOST_POINTS));
        }
        List<Lane> lanes =
                road.isPresent() && !large ? along.across(hazard, new AcrossRoad(road.get(), stance)) : along.lanes;
        return new Surroundings(
                along.lines,
                lanes,
                along.judgesGround,
                along.surveyM,
                along.structureM,
                along.sagM,
                along.keptM,
                List.copyOf(limits),
                along.terms,
                along.notes);
    }

    private List<Lane> across(Hazard hazard, AcrossRoad road) {
        List<Lane> all = new ArrayList<>();
        if (judgesGround) {
            road.underUnits()
                    .forEach(p -> all.add(new Lane(p.line(UnitName.TRAILER), Optional.empty(), Optional.of(p))));
        }
        if (hazard instanceof Overhead over) {
            road.overUnits().forEach(p -> {
                RoadProfile line = p.line(UnitName.TRAILER);
                all.add(new Lane(line, Optional.of(soffitOver(over.height(), line)), Optional.of(p)));
            });
        }
        return List.copyOf(all);
    }

    private static Surroundings road(RoadHump hump) {
        return onGround(hump, SurveySpacing.onRoad(hump.lines()), List.of());
    }

    private static Surroundings crossing(RailCrossing crossing) {
        List<String> notes = new ArrayList<>();
        List<Sentence> limits = new ArrayList<>();
        crossing.crossingNumber().ifPresent(n -> notes.add("crossing number " + n));
        for (String sign : crossing.signs()) {
            notes.add("sign posted: " + sign);
        }
        if (!crossing.hasLowGroundSign()) {
            notes.add("no low-ground-clearance sign (W10-5) is recorded; that does not mean the crossing is flat");
        }
        limits.addAll(SurveySpacing.atTracks(crossing.lines(), crossing.tracksM()));
        return onGround(crossing, limits, notes);
    }

    private static Surroundings onGround(Hazard hazard, List<Sentence> limits, List<String> notes) {
        List<Lane> lanes =
                hazard.lines().stream().map(l -> new Lane(l, Optional.empty())).toList();
        return new Surroundings(
                hazard.lines(),
                lanes,
                true,
                hazard.survey().map(Uncertainty::valueM).orElse(0.0),
                0,
                0,
                0,
                limits,
                terms(hazard, OptionalDouble.empty()),
                withOneLine(hazard, notes));
    }

    private static List<String> withOneLine(Hazard hazard, List<String> notes) {
        List<String> all = new ArrayList<>(notes);
        if (hazard.lines().size() == 1) {
            all.add("only one wheel path is surveyed; the others may be higher");
        } else if (CrossSection.of(hazard.lines()).isEmpty()) {
            all.add("the lines have no offsets: nothing between and beside them was looked at");
        }
        return List.copyOf(all);
    }

    private static Surroundings structure(LowStructure structure, boolean wire) {
        List<Sentence> limits = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        boolean known = structure.isSurveyed();
        boolean road = !structure.lines().isEmpty();
        notes.add("height " + (known ? structure.measured().word() : "unknown"));
        if (known && structure.measured() == Measured.REPORTED) {
            limits.add(Sentence.of(Code.WHY_HEIGHT_REPORTED)
                    .with("source", structure.reportedBy().orElseThrow()));
        }
        if (known && structure.measured() == Measured.UNKNOWN) {
            limits.add(Sentence.of(Code.WHY_HEIGHT_HOW));
        }
        if (known && !road) {
            notes.add("the road profile under the " + (wire ? "wire" : "structure")
                    + " is unknown: taken as straight, with extra room for a sag");
        }
        List<Lane> lanes = !known
                ? List.of()
                : road
                        ? structure.lines().stream()
                                .map(l -> new Lane(l, Optional.of(soffitOver(structure, l))))
                                .toList()
                        : List.of(flatLane(structure));
        if (known && road) {
            limits.addAll(SurveySpacing.under(lanes));
        }
        if (structure.measured() == Measured.SURVEYED && known && !wire) {
            notes.addAll(signNotes(structure.leastHeightM().orElseThrow()));
        }
        boolean leveled = structure.soffit().isPresent() && structure.measured() == Measured.SURVEYED;
        double heightM = !known || leveled
                ? 0
                : structure.measured() == Measured.SURVEYED
                        ? structure.survey().orElseThrow().valueM()
                        : POSTED_M;
        return new Surroundings(
                lanes.stream().map(Lane::line).toList(),
                lanes,
                known && road,
                road ? structure.survey().orElseThrow().valueM() : 0,
                heightM,
                road ? 0 : UNKNOWN_SAG_M,
                0,
                limits,
                terms(structure, heightM == POSTED_M ? OptionalDouble.of(POSTED_M) : OptionalDouble.empty()),
                road ? withOneLine(structure, notes) : List.copyOf(notes));
    }

    /** What signs a driver may expect before a structure of this measured height. */
    private static List<String> signNotes(double measuredM) {
        List<String> notes = new ArrayList<>();
        notes.add("a height sign set 3 in under the measured height would read "
                + wholeInches(SignedHeight.texanM(measuredM)) + " (TxDOT rule), by the UK rules "
                + wholeInches(SignedHeight.britishM(measuredM)) + " or "
                + new Length(SignedHeight.britishMetricM(measuredM)).inMeters(1));
        if (SignedHeight.isW12Required(measuredM, STATUTORY_HEIGHT_M)) {
            notes.add(
                    "low enough for a low-clearance sign (W12-2) where vehicles may be 13 ft 6 in high (MUTCD 2009, 2C.27)");
        }
        return notes;
    }

    /** A sign never reads more than its rule gives. */
    private static String wholeInches(double heightM) {
        return Length.ofInches(Math.floor(new Length(heightM).inches() + 1e-6)).inFeetAndInches(1);
    }

    /** A single clearance is the least anywhere in its extent, so the soffit lies at least that far above the road. */
    private static Soffit soffitOver(LowStructure structure, RoadProfile line) {
        if (structure.soffit().isPresent()) {
            return structure.soffit().get();
        }
        Extent extent = structure.extent().orElseThrow();
        double clearance = structure.clearanceM().orElseThrow();
        TreeSet<Double> at = new TreeSet<>();
        at.add(extent.fromM());
        at.add(extent.toM());
        for (SurveyedPoint p : line.points()) {
            if (p.distanceM() > extent.fromM() && p.distanceM() < extent.toM()) {
                at.add(p.distanceM());
            }
        }
        return Soffit.of(at.stream()
                .map(s -> new SurveyedPoint(s, line.heightAt(s) + clearance))
                .toList());
    }

    private static Lane flatLane(LowStructure structure) {
        return new Lane(RoadProfile.level(), Optional.of(soffitOver(structure, RoadProfile.level())));
    }

    private static List<UncertaintyTerm> terms(Hazard hazard, OptionalDouble posted) {
        List<UncertaintyTerm> terms = new ArrayList<>();
        hazard.survey().ifPresent(s -> terms.add(new UncertaintyTerm("survey", s.valueM(), s.source())));
        posted.ifPresent(p -> terms.add(new UncertaintyTerm(
                "posted or unknown height",
                p,
                "default: frost or an overlay may have raised the road by this much since the sign was set")));
        return List.copyOf(terms);
    }
}
