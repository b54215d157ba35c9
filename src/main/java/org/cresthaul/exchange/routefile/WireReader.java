package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.road.HangingWire;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.route.OverheadWire;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/** Reads a wire over the road: how low it hangs, what it carries, and what its owner asks. */
final class WireReader {
    static final LengthLimits SPAN = new LengthLimits(1, 1000);
    static final LengthLimits LOWERING = new LengthLimits(0, 15);
    static final LengthLimits KEEP_AWAY = new LengthLimits(0, 30);
    private static final List<String> CARRIES = Stream.of(OverheadWire.Carries.values())
            .map(OverheadWire.Carries::word)
            .toList();

    private final JsonFields properties;
    private final Problems problems;
    private final ProfileReader profiles;
    private final OverheadReader heights;

    /** Height of a wire as judged: lowered by heat and ice, as a line or as one clearance. */
    private record Height(
            Optional<Soffit> soffit, OptionalDouble clearanceM, Optional<LowStructure.Extent> extent, double steepest) {
        static final Height UNKNOWN = new Height(Optional.empty(), OptionalDouble.empty(), Optional.empty(), 0);
    }

    WireReader(JsonFields properties, ProfileReader profiles) {
        this.properties = properties;
        this.profiles = profiles;
        problems = properties.problems();
        heights = new OverheadReader(properties, profiles);
    }

    Function<HazardPlace, Hazard> wire() {
        String word = heights.measured(Measured.SURVEYED, Measured.DECLARED, Measured.REPORTED, Measured.UNKNOWN);
        Measured measured = Measured.of(word);
        Optional<String> reportedBy = heights.reportedBy(word);
        OverheadWire.Carries carries = carries();
        OptionalDouble voltageV = properties.findVoltageV("voltage");
        if (voltageV.isPresent() && carries != OverheadWire.Carries.POWER) {
            properties.problem(
                    "voltage",
                    "voltage-alone",
                    "A voltage is given for a wire that is not said to carry power.",
                    "Write \"carries\": \"power\", or leave the voltage out.");
        }
        OptionalDouble keepAwayM = properties.findLengthM("keepAway", KEEP_AWAY);
        OptionalDouble lowering = properties.findLengthM("lowering", LOWERING);
        Height height = height(lowering.orElse(0));
        if (measured == Measured.SURVEYED && height.clearanceM.isPresent()) {
            profiles.requireSurvey("A surveyed wire");
        }
        boolean lowest = measured == Measured.DECLARED || lowering.isPresent();
        return place -> new OverheadWire(
                new LowStructure(
                        place,
                        height.soffit,
                        height.clearanceM,
                        height.extent,
                        measured,
                        profiles.lines(),
                        profiles.survey(),
                        reportedBy),
                carries,
                voltageV,
                height.steepest,
                lowest,
                keepAwayM);
    }

    private OverheadWire.Carries carries() {
        String word = properties.word("carries", CARRIES);
        return Stream.of(OverheadWire.Carries.values())
                .filter(c -> c.word().equals(word))
                .findFirst()
                .orElse(OverheadWire.Carries.UNKNOWN);
    }

    private Height height(double loweringM) {
        OptionalDouble clearanceM = properties.findLengthM("clearance", OverheadReader.CLEARANCE);
        Optional<LowStructure.Extent> extent = heights.extent(clearanceM.isPresent());
        Optional<JsonFields> wire = properties.findObject("wire");
        if (wire.isPresent() && clearanceM.isPresent()) {
            properties.problem(
                    "clearance",
                    "both-heights",
                    "A wire has its supports and its middle, or a clearance, not both.",
                    "Keep the supports and the middle: they say more.");
        }
        if (wire.isPresent()) {
            return hanging(wire.get(), loweringM).map(this::overRoad).orElse(Height.UNKNOWN);
        }
        if (clearanceM.isEmpty() || extent.isEmpty()) {
            return Height.UNKNOWN;
        }
        double loweredM = clearanceM.getAsDouble() - loweringM;
        if (loweredM < 0) {
            properties.problem(
                    "lowering",
                    "below-road",
                    "Lowered by heat or ice, the wire would lie below the road.",
                    "Check the units of both lengths.");
            return Height.UNKNOWN;
        }
        return new Height(Optional.empty(), OptionalDouble.of(loweredM), extent, 0);
    }

    /** Above road lines as a line of its own; without them as one clearance, straight up from the hazard's point. */
    private Height overRoad(HangingWire wire) {
        Soffit soffit = wire.soffit();
        if (properties.has("profile")) {
            heights.requireSameDatum(soffit, "wire");
            return new Height(
                    Optional.of(soffit),
                    OptionalDouble.empty(),
                    Optional.empty(),
                    wire.isLevel() ? 0 : wire.steepestAlong());
        }
        double lowestM = wire.lowestM();
        if (lowestM < 0) {
            properties.problem(
                    "wire", "below-road", "The wire would lie below the road.", "Count heights from the road.");
            return Height.UNKNOWN;
        }
        return new Height(
                Optional.empty(),
                OptionalDouble.of(lowestM),
                Optional.of(new LowStructure.Extent(soffit.startM(), soffit.endM())),
                0);
    }

    private Optional<HangingWire> hanging(JsonFields wire, double loweringM) {
        int before = problems.count();
        List<JsonNode> supports = wire.items("supports", 2, 2);
        double midSpanM = wire.lengthM("midSpan", ProfileReader.ELEVATION);
        double spanM = wire.lengthM("span", SPAN);
        wire.refuseOthers();
        if (problems.count() > before || supports.size() != 2) {
            return Optional.empty();
        }
        Optional<SurveyedPoint> first = support(supports.get(0), wire.pointer("supports") + "/0");
        Optional<SurveyedPoint> second = support(supports.get(1), wire.pointer("supports") + "/1");
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        requireShape(wire, first.get(), second.get(), midSpanM - loweringM, spanM);
        return problems.count() > before
                ? Optional.empty()
                : Optional.of(new HangingWire(first.get(), second.get(), midSpanM - loweringM, spanM));
    }

    private Optional<SurveyedPoint> support(JsonNode item, String at) {
        if (!item.isArray() || item.size() != 2) {
            problems.add(
                    "wrong-type",
                    "A support is a list of a distance and a height.",
                    at,
                    "Write it as in [\"-12 m\", \"9.1 m\"].");
            return Optional.empty();
        }
        double alongM =
                JsonQuantities.lengthM(item.get(0), at + "/0", "The distance", ProfileReader.DISTANCE, problems);
        double heightM =
                JsonQuantities.lengthM(item.get(1), at + "/1", "The height", ProfileReader.ELEVATION, problems);
        return Double.isNaN(alongM) || Double.isNaN(heightM)
                ? Optional.empty()
                : Optional.of(new SurveyedPoint(alongM, heightM));
    }

    private static void requireShape(
            JsonFields wire, SurveyedPoint first, SurveyedPoint second, double midSpanM, double spanM) {
        double alongM = second.distanceM() - first.distanceM();
        if (alongM < 0) {
            wire.problem(
                    "supports",
                    "order",
                    "The second support is met before the first.",
                    "List the supports in the direction of travel.");
        } else if (alongM > spanM) {
            wire.problem(
                    "span",
                    "span-too-short",
                    "The supports are farther apart along the road than the span is long.",
                    "The span is the distance in plan from support to support.");
        }
        double sagM = HangingWire.sagM(first, second, midSpanM);
        if (sagM < 0) {
            wire.problem(
                    "midSpan",
                    "no-sag",
                    "The middle is higher than halfway between the supports.",
                    "A wire sags: check which height is which.");
        } else if (sagM > HangingWire.MOST_SAG * spanM) {
            wire.problem(
                    "midSpan",
                    "sag-too-deep",
                    "The wire sags by more than a tenth of its span.",
                    "Check the heights and the span, or give one \"clearance\" with its \"extent\".");
        }
        if (Math.abs(second.elevationM() - first.elevationM()) > HangingWire.STEEPEST_CHORD * spanM) {
            wire.problem(
                    "supports",
                    "supports-too-uneven",
                    "One support is higher than the other by more than half the span.",
                    "Check the heights and the span, or give one \"clearance\" with its \"extent\".");
        }
    }
}
