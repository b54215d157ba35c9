package org.cresthaul.exchange.routefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.Approach;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.Soffit;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/** Reads what was surveyed at a hazard: road lines, the grades they go on with, and how accurate all that is. */
final class ProfileReader {
    static final int MOST_POINTS = 10_000;
    static final int MOST_LINES = 9;
    static final LengthLimits DISTANCE = new LengthLimits(-2000, 2000);
    /** Of a line beside the path of the truck's middle. */
    static final LengthLimits OFFSET = new LengthLimits(-30, 30);

    static final LengthLimits ELEVATION = new LengthLimits(-500, 9000);
    static final LengthLimits ACCURACY = new LengthLimits(0.001, 5);
    static final double MOST_GRADE = PiecewiseLine.STEEPEST;

    private final JsonFields hazard;
    private final Problems problems;
    private final Optional<JsonFields> surveyFields;
    private final Optional<Uncertainty> survey;
    private final List<RoadProfile> lines;
    private int pointCount;

    ProfileReader(JsonFields hazard) {
        this.hazard = hazard;
        problems = hazard.problems();
        surveyFields = hazard.findObject("survey");
        survey = surveyFields.flatMap(s -> SurveyFields.read(s, ACCURACY));
        boolean profiled = hazard.has("profile");
        Optional<Approach> before = approach("approachBefore", profiled);
        Optional<Approach> after = approach("approachAfter", profiled);
        lines = profiled ? lines(before, after) : List.of();
        if (profiled) {
            requireSurvey("A surveyed profile");
        }
    }

    /** The sound lines; all of them when no problem was added. */
    List<RoadProfile> lines() {
        return lines;
    }

    /** How many points were read, sound or not. */
    int pointCount() {
        return pointCount;
    }

    Optional<Uncertainty> survey() {
        return survey;
    }

    /** Adds a problem when the file does not say how accurate the survey is. */
    void requireSurvey(String what) {
        if (surveyFields.isEmpty()) {
            hazard.problem(
                    "survey",
                    "missing",
                    what + " needs the accuracy of its survey.",
                    "Add \"survey\": {\"accuracy\": \"10 mm\", \"source\": \"who measured, how\"}.");
        }
    }

    private Optional<Approach> approach(String key, boolean profiled) {
        Optional<JsonFields> given = hazard.findObject(key);
        if (given.isEmpty()) {
            return Optional.of(Approach.undeclared());
        }
        if (!profiled) {
            hazard.problem(
                    key,
                    "approach-alone",
                    "An approach grade is given without a profile to go on from.",
                    "Add the \"profile\", or leave the approach out.");
        }
        JsonFields fields = given.get();
        double grade = fields.grade("grade", -MOST_GRADE, MOST_GRADE);
        double accuracy = fields.grade("accuracy", 0, MOST_GRADE);
        fields.refuseOthers();
        return Double.isNaN(grade) || Double.isNaN(accuracy)
                ? Optional.empty()
                : Optional.of(Approach.declared(grade, accuracy));
    }

    private List<RoadProfile> lines(Optional<Approach> before, Optional<Approach> after) {
        List<RoadProfile> read = new ArrayList<>();
        Set<String> names = new HashSet<>();
        int withOffset = 0;
        int all = 0;
        boolean sound = true;
        for (JsonFields line : hazard.objects("profile", 1, MOST_LINES)) {
            String name = line.text("line", 40);
            if (!name.isEmpty() && !names.add(name)) {
                line.problem(
                        "line",
                        "line-twice",
                        "Two lines are called \"" + name + "\".",
                        "Name each wheel path once, such as \"left\", \"center\", \"right\".");
            }
            OptionalDouble offsetM = line.findLengthM("offset", OFFSET);
            offsetM.ifPresent(at -> {
                if (read.stream()
                        .anyMatch(l -> Math.abs(l.offsetM().orElse(Double.NaN) - at) < CrossSection.LEAST_APART_M)) {
                    line.problem(
                            "offset",
                            "offset-twice",
                            "Two lines of this hazard run less than 20 mm (3/4 in) apart.",
                            "Give each line the offset at which it was surveyed, or keep one of the two.");
                }
            });
            all++;
            withOffset += line.has("offset") ? 1 : 0;
            sound &= !line.has("offset") || offsetM.isPresent() && !Double.isNaN(offsetM.getAsDouble());
            // One that is wrong is told already.
            if (sound && withOffset > 0 && withOffset < all) {
                line.problem(
                        "offset",
                        "offset-missing",
                        "Some lines of this hazard have an offset, and some have none.",
                        "Give every line its \"offset\" from the path of the truck's middle, or none.");
            }
            Optional<List<SurveyedPoint>> points = points(line, "points");
            line.refuseOthers();
            points.ifPresent(p -> {
                if (p.get(0).distanceM() > 0 || p.get(p.size() - 1).distanceM() < 0) {
                    line.problem(
                            "points",
                            "profile-misses-hazard",
                            "The profile does not cover the hazard's point.",
                            "Distances count from the hazard's point (0 m) in the direction of travel.");
                }
                if (!name.isEmpty() && before.isPresent() && after.isPresent()) {
                    read.add(RoadProfile.of(name, offsetM, p, before.get(), after.get()));
                }
            });
        }
        return read;
    }

    /** The soffit in a field of the hazard; empty after a problem. */
    Optional<Soffit> soffit(String key) {
        return points(hazard, key).map(Soffit::of);
    }

    private Optional<List<SurveyedPoint>> points(JsonFields owner, String key) {
        pointCount += owner.find(key).isArray() ? owner.find(key).size() : 0;
        return points(owner, key, MOST_POINTS);
    }

    /** Points as [distance, elevation]; empty after a problem. */
    static Optional<List<SurveyedPoint>> points(JsonFields owner, String key, int most) {
        Problems problems = owner.problems();
        int before = problems.count();
        List<JsonNode> items = owner.items(key, 2, most);
        List<SurveyedPoint> points = new ArrayList<>(items.size());
        double lastM = Double.NaN;
        double lastZ = Double.NaN;
        for (int i = 0; i < items.size(); i++) {
            JsonNode item = items.get(i);
            String at = owner.pointer(key) + "/" + i;
            if (!item.isArray() || item.size() != 2) {
                problems.add(
                        "wrong-type",
                        "A point is a list of a distance and an elevation.",
                        at,
                        "Write it as in [\"-12 m\", \"104.25 m\"].");
                continue;
            }
            double s = JsonQuantities.lengthM(item.get(0), at + "/0", "The distance", DISTANCE, problems);
            double z = JsonQuantities.lengthM(item.get(1), at + "/1", "The elevation", ELEVATION, problems);
            if (s == lastM) {
                problems.add(
                        "distance-twice",
                        "Two points have the same distance.",
                        at + "/0",
                        "Keep one of them; a step in the road is two points a little apart.");
            } else if (s < lastM) {
                problems.add(
                        "distance-order",
                        "The distances fall here.",
                        at + "/0",
                        "List the points in the direction of travel.");
            } else if (Math.abs((z - lastZ) / (s - lastM)) > PiecewiseLine.STEEPEST) {
                problems.add(
                        "too-steep",
                        "The line is steeper than " + Math.round(PiecewiseLine.STEEPEST * 100)
                                + " % before this point.",
                        at,
                        "Check the units of both numbers; spread a step over its length.");
            }
            if (!Double.isNaN(s)) {
                lastM = s;
                lastZ = z;
            }
            if (!Double.isNaN(s) && !Double.isNaN(z)) {
                points.add(new SurveyedPoint(s, z));
            }
        }
        return problems.count() == before && !points.isEmpty() ? Optional.of(points) : Optional.empty();
    }
}
