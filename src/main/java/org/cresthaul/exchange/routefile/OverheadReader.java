package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.units.LengthLimits;

/** Reads the height of what is over the road. */
final class OverheadReader {
    static final LengthLimits CLEARANCE = new LengthLimits(0.5, 30);
    /** A soffit higher over the road than this has another datum than the road. */
    static final double HIGHEST_SOFFIT_M = 30;

    private final JsonFields properties;
    private final ProfileReader profiles;

    OverheadReader(JsonFields properties, ProfileReader profiles) {
        this.properties = properties;
        this.profiles = profiles;
    }

    /** How the height was come by, as one of these. */
    String measured(Measured... among) {
        return properties.word("measured", Stream.of(among).map(Measured::word).toList());
    }

    /** A low structure: a soffit above road lines, or one clearance over a stretch, or nothing known. */
    Function<HazardPlace, Hazard> structure() {
        String measured = measured(Measured.SURVEYED, Measured.POSTED, Measured.REPORTED, Measured.UNKNOWN);
        Optional<String> reportedBy = reportedBy(measured);
        OptionalDouble clearanceM = properties.findLengthM("clearance", CLEARANCE);
        Optional<LowStructure.Extent> extent = extent(clearanceM.isPresent());
        Optional<Soffit> soffit = Optional.empty();
        if (properties.has("soffit")) {
            soffit = profiles.soffit("soffit");
            if (clearanceM.isPresent()) {
                properties.problem(
                        "clearance",
                        "both-heights",
                        "A structure has a soffit or a clearance, not both.",
                        "Keep the soffit: it says more.");
            }
            if (!properties.has("profile")) {
                properties.problem(
                        "soffit",
                        "soffit-without-profile",
                        "A soffit is given without the road profile below it.",
                        "Add the \"profile\", above the same datum, or give a \"clearance\" with its \"extent\".");
            }
            if (measured.equals("reported")) {
                properties.problem(
                        "measured",
                        "reported-soffit",
                        "A reported height is one clearance, not a soffit line.",
                        "Give a \"clearance\" with its \"extent\", or say how the soffit was measured.");
            }
            if (measured.equals("posted")) {
                properties.problem(
                        "measured",
                        "posted-soffit",
                        "A posted height is one clearance, not a soffit line.",
                        "Give a \"clearance\" with its \"extent\", or say how the soffit was measured.");
            }
            soffit.ifPresent(s -> requireSameDatum(s, "soffit"));
        }
        if (measured.equals("surveyed") && clearanceM.isPresent()) {
            profiles.requireSurvey("A surveyed clearance");
        }
        Optional<Soffit> line = soffit;
        return place -> new LowStructure(
                place,
                line,
                clearanceM,
                extent,
                Measured.of(measured),
                profiles.lines(),
                profiles.survey(),
                reportedBy);
    }

    /** Who says so, of a reported height; empty of any other, and after a problem. */
    Optional<String> reportedBy(String measured) {
        if (measured.equals("reported")) {
            return Optional.of(properties.text("reportedBy", JsonFields.LONGEST_NOTE));
        }
        if (properties.has("reportedBy")) {
            properties.problem(
                    "reportedBy",
                    "not-reported",
                    "Only a reported height says who reports it.",
                    "Write \"measured\": \"reported\", or leave it out.");
            properties.find("reportedBy");
        }
        return Optional.empty();
    }

    /** Where a clearance holds; empty after a problem. */
    Optional<LowStructure.Extent> extent(boolean clearanceGiven) {
        Optional<List<JsonNode>> items = properties.findItems("extent", 2, 2);
        if (items.isEmpty() || !clearanceGiven) {
            if (clearanceGiven) {
                properties.problem(
                        "extent",
                        "missing",
                        "A clearance needs the stretch of road it holds for.",
                        "Add \"extent\": [\"-3 m\", \"5 m\"], from the hazard's point in the direction of travel.");
            } else if (items.isPresent()) {
                properties.problem(
                        "extent",
                        "extent-alone",
                        "An extent is given without a clearance.",
                        "Add the \"clearance\", or leave the extent out.");
            }
            return Optional.empty();
        }
        if (items.get().isEmpty()) {
            return Optional.empty();
        }
        return HazardReader.ends(properties, items.get(), ProfileReader.DISTANCE, "extent");
    }

    /** Adds a problem to a field when what it says does not hang over the road lines. */
    void requireSameDatum(Soffit soffit, String key) {
        for (RoadProfile line : profiles.lines()) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < soffit.size(); i++) {
                double gapM = soffit.elevationM(i) - line.heightAt(soffit.distanceM(i));
                least = Math.min(least, gapM);
                most = Math.max(most, gapM);
            }
            for (int i = 0; i < line.size(); i++) {
                double s = line.distanceM(i);
                if (s >= soffit.startM() && s <= soffit.endM()) {
                    double gapM = soffit.heightAt(s) - line.elevationM(i);
                    least = Math.min(least, gapM);
                    most = Math.max(most, gapM);
                }
            }
            if (least <= 0 || most > HIGHEST_SOFFIT_M) {
                properties.problem(
                        key,
                        "other-datum",
                        "The " + key + " is " + (least <= 0 ? "not above" : "more than 30 m" + " above")
                                + " the road line \"" + line.name() + "\".",
                        "Give both above the same datum.");
                return;
            }
        }
    }
}
