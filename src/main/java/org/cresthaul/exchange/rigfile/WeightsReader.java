package org.cresthaul.exchange.rigfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.UnitName;
import org.cresthaul.rig.Weights;
import org.cresthaul.rig.Weights.MassPoint;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Mass;
import org.cresthaul.units.Problems;
import org.cresthaul.units.UnitSystem;

/** Reads the weights of a stance; {@link #weights} makes them once the whole stance was found sound. */
final class WeightsReader {
    static final double MOST_KG = 500_000;
    static final double MOST_ACCURACY = 0.2;
    static final LengthLimits OFFSET = new LengthLimits(-3, 3);
    static final LengthLimits TRACK = new LengthLimits(0.5, 6);
    /** All tires of one axle together. */
    private static final LengthLimits TIRES = new LengthLimits(0.1, 10);

    static final LengthLimits ARM = new LengthLimits(0.01, 3);
    static final LengthLimits PLATE = new LengthLimits(0, 0.2);
    private static final double MOST_FOLD_RAD = Math.toRadians(10);
    private static final int MOST_PLATES = 8;

    private final Problems problems;
    private final Map<String, OutlineFields> topsides;
    private final Weights weights;

    /**
     * @param jeeps the topside of each jeep that the stance has
     * @param boosters those of the stance
     * @param loads outlines on the deck by name; each must be weighed, and nothing else
     * @param topsides of the other parts, by the key of their weight
     */
    WeightsReader(
            JsonFields fields,
            List<OutlineFields> jeeps,
            BoosterReader boosters,
            Map<String, OutlineFields> loads,
            Map<String, OutlineFields> topsides) {
        problems = fields.problems();
        this.topsides = topsides;
        int before = problems.count();
        double accuracy = fields.grade("accuracy", 0, MOST_ACCURACY);
        String source = fields.text("source", JsonFields.LONGEST_NAME);
        MassPoint tractor = unit(fields, "tractor");
        List<MassPoint> jeepMasses = jeeps(fields, jeeps);
        MassPoint trailer = unit(fields, "trailer");
        MassPoint gooseneck = unit(fields, "gooseneck");
        Optional<Weights.BoosterWeight> booster = booster(fields, boosters.given());
        List<Weights.BoosterBehind> behind = boostersBehind(fields, boosters.topsidesBehind());
        List<Weights.Piece> pieces = pieces(fields, loads);
        Map<AxleKind, Double> tracks =
                fields.findObject("tracks").map(WeightsReader::tracks).orElse(Map.of());
        Weights.Ratings ratings = fields.findObject("ratings")
                .map(WeightsReader::ratings)
                .orElse(new Weights.Ratings(Map.of(), Map.of(), OptionalDouble.empty()));
        OptionalDouble leastKg = fields.findMassKg("leastBraked", 0, MOST_KG);
        Weights.Gauges gauges = fields.findObject("gauges").map(this::gauges).orElse(Weights.Gauges.NONE);
        Optional<Weights.Regulator> regulator = fields.findObject("regulator").map(r -> regulator(r, gauges));
        Optional<Weights.ShimSet> shims = fields.findObject("shims").map(this::shims);
        Optional<Weights.FrontLift> lift = fields.findObject("frontLift").map(this::frontLift);
        OptionalDouble grossKg = fields.findMassKg("gross", 1, MOST_KG);
        fields.refuseOthers();
        if (!fields.isThere() || problems.count() > before) {
            weights = null;
            return;
        }
        weights = new Weights(
                accuracy,
                source,
                tractor,
                jeepMasses,
                trailer,
                gooseneck,
                booster,
                behind,
                pieces,
                tracks,
                ratings,
                leastKg,
                gauges,
                regulator,
                shims,
                lift);
        grossKg.ifPresent(kg -> requireSum(fields, kg));
        requireTracks(fields, !jeeps.isEmpty(), boosters.given());
    }

    /** The weights, when no problem was added. */
    Weights weights() {
        return weights;
    }

    private Stream<MassPoint> all() {
        return Stream.of(
                        Stream.of(weights.tractor(), weights.trailer(), weights.gooseneck()),
                        weights.jeeps().stream(),
                        weights.booster().stream().map(Weights.BoosterWeight::standing),
                        weights.boostersBehind().stream().map(Weights.BoosterBehind::standing),
                        weights.pieces().stream().map(Weights.Piece::at))
                .flatMap(s -> s);
    }

    private void requireSum(JsonFields fields, double grossKg) {
        double sumKg = all().mapToDouble(MassPoint::massKg).sum();
        if (Math.abs(sumKg - grossKg) > weights.accuracy() * grossKg + 0.5) {
            fields.problem(
                    "gross",
                    "weights-do-not-add-up",
                    "The parts weigh "
                            + new Mass(sumKg).format(UnitSystem.US_CUSTOMARY) + " ("
                            + new Mass(sumKg).format(UnitSystem.METRIC)
                            + ") together, the gross weight given is "
                            + new Mass(grossKg).format(UnitSystem.US_CUSTOMARY) + " ("
                            + new Mass(grossKg).format(UnitSystem.METRIC) + "): farther apart than the accuracy.",
                    "Look for the part whose weight is wrong or missing, or leave the gross weight out.");
        }
    }

    private void requireTracks(JsonFields fields, boolean hasJeep, boolean hasBooster) {
        if (all().allMatch(m -> m.offsetM() == 0)) {
            return;
        }
        for (AxleKind kind : AxleKind.values()) {
            if (!weights.tracks().containsKey(kind)
                    && (kind != AxleKind.BOOSTER || hasBooster)
                    && (kind != AxleKind.JEEP || hasJeep)) {
                fields.problem(
                        "tracks",
                        "missing",
                        "A weight is off the center line, but the track of the " + kind.word() + " axles is not given.",
                        "Add \"tracks\" with the distance between left and right tire centers of"
                                + " every axle kind, or give no offset.");
            }
        }
    }

    /** One weight for each jeep, front to rear. */
    private static List<MassPoint> jeeps(JsonFields fields, List<OutlineFields> topsides) {
        List<MassPoint> masses = new ArrayList<>();
        List<JsonFields> items = fields.findObjects("jeeps", 0, JeepReader.MOST_JEEPS);
        if (items.size() != topsides.size() && fields.isThere()) {
            fields.problem(
                    "jeeps",
                    "jeeps-not-weighed",
                    "The stance has " + topsides.size() + " jeeps, but " + items.size() + " are weighed.",
                    "Give each jeep's weight and center of gravity in \"jeeps\", front to rear.");
        }
        for (int i = 0; i < items.size(); i++) {
            MassPoint at = massPoint(items.get(i));
            requireInside(items.get(i), "cg", at, i < topsides.size() ? topsides.get(i) : null, "the jeep");
            if (at != null) {
                masses.add(at);
            }
        }
        return masses;
    }

    private MassPoint unit(JsonFields fields, String key) {
        JsonFields part = fields.object(key);
        MassPoint at = massPoint(part);
        requireInside(part, "cg", at, topsides.get(key), "the " + key + "'s unit");
        return at;
    }

    /** A weight outside what is drawn of it is in another frame, or belongs to something that is not drawn. */
    private static void requireInside(JsonFields part, String key, MassPoint at, OutlineFields outline, String what) {
        if (at != null && outline != null && !outline.canHoldWeightAt(at.xM(), at.hM())) {
            part.problem(
                    key,
                    "cg-outside",
                    "The center of gravity is not within the outline of " + what + ".",
                    "Give both in the same frame: x runs forward from the same origin, h up from the ground; draw all of"
                            + " it.");
        }
    }

    private static MassPoint massPoint(JsonFields part) {
        double massKg = part.massKg("weight", 0, MOST_KG);
        MassPoint at = cg(part.object("cg"), massKg);
        part.refuseOthers();
        return at;
    }

    /** Null after a problem. */
    private static MassPoint cg(JsonFields cg, double massKg) {
        double xM = cg.lengthM("x", OutlineFields.X);
        double hM = cg.lengthM("h", OutlineFields.H);
        double offsetM = cg.findLengthM("offset", OFFSET).orElse(0);
        cg.refuseOthers();
        boolean sound =
                Double.isFinite(xM) && Double.isFinite(hM) && Double.isFinite(offsetM) && Double.isFinite(massKg);
        return sound ? new MassPoint(massKg, xM, hM, offsetM) : null;
    }

    private Optional<Weights.BoosterWeight> booster(JsonFields fields, boolean hasBooster) {
        Optional<JsonFields> booster = fields.findObject("booster");
        if (hasBooster && booster.isEmpty() && fields.isThere()) {
            fields.problem(
                    "booster",
                    "missing",
                    "The stance has a booster, but its weight is not given.",
                    "Add \"booster\": {\"weight\": \"...\", \"cg\": {\"x\": \"...\", \"h\": \"...\"}}.");
        }
        if (!hasBooster && booster.isPresent()) {
            fields.problem(
                    "booster",
                    "no-booster",
                    "A booster is weighed that the stance does not have.",
                    "Leave it out, or add the booster to the stance.");
        }
        if (booster.isEmpty()) {
            return Optional.empty();
        }
        JsonFields part = booster.get();
        double massKg = part.massKg("weight", 0, MOST_KG);
        MassPoint standing = cg(part.object("cg"), massKg);
        Optional<MassPoint> carried = part.findObject("carriedCg").map(c -> cg(c, massKg));
        part.refuseOthers();
        requireInside(part, "cg", standing, topsides.get("booster"), "the booster");
        carried.ifPresent(c -> requireInside(part, "carriedCg", c, topsides.get("carriedCg"), "the carried booster"));
        return standing == null ? Optional.empty() : Optional.of(new Weights.BoosterWeight(standing, carried));
    }

    private List<Weights.BoosterBehind> boostersBehind(JsonFields fields, List<OutlineFields> drawn) {
        List<Weights.BoosterBehind> behind = new ArrayList<>();
        List<JsonFields> given = fields.findObjects("boostersBehind", 0, BoosterReader.MOST_BEHIND);
        if (given.size() != drawn.size() && fields.isThere()) {
            fields.problem(
                    "boostersBehind",
                    given.size() < drawn.size() ? "missing" : "no-booster",
                    "The stance has " + drawn.size() + " boosters behind the booster, and " + given.size()
                            + " are weighed.",
                    "Give each its weight, gauge and pressure, in the order of the stance's \"boostersBehind\".");
        }
        for (int i = 0; i < given.size(); i++) {
            JsonFields part = given.get(i);
            MassPoint standing = cg(part.object("cg"), part.massKg("weight", 0, MOST_KG));
            Optional<ChartPoints> gauge = ChartReader.read(part.object("gauge"));
            double setPa = part.pressurePa("set");
            part.refuseOthers();
            requireInside(
                    part,
                    "cg",
                    standing,
                    i < drawn.size() ? drawn.get(i) : null,
                    UnitName.booster(i + 2).told());
            if (gauge.isPresent() && isBeyond(gauge.get(), setPa)) {
                part.problem(
                        "set",
                        "beyond-chart",
                        "The gauge's chart does not have the pressure that is set.",
                        "Extend the chart, or set what it has: without it a pressure says nothing about the load.");
            } else if (gauge.isPresent() && standing != null && Double.isFinite(setPa)) {
                behind.add(new Weights.BoosterBehind(standing, gauge.get(), setPa));
            }
        }
        return behind;
    }

    private static boolean isBeyond(ChartPoints chart, double pascals) {
        List<ChartPoints.Point> points = chart.points();
        return pascals < points.get(0).pressurePa()
                || pascals > points.get(points.size() - 1).pressurePa();
    }

    private static List<Weights.Piece> pieces(JsonFields fields, Map<String, OutlineFields> loads) {
        List<Weights.Piece> pieces = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (JsonFields item : fields.findObjects("pieces", 0, StanceReader.MOST_LOADS)) {
            int before = fields.problems().count();
            String name = item.text("name", JsonFields.LONGEST_NAME);
            if (!name.isEmpty() && !names.add(name)) {
                item.problem(
                        "name", "name-twice", "Two pieces are called \"" + name + "\".", "Give each its own name.");
            }
            MassPoint at = massPoint(item);
            OutlineFields drawn = loads.get(name);
            if (!name.isEmpty() && drawn == null && fields.isThere()) {
                item.problem(
                        "name",
                        "piece-not-drawn",
                        "The piece \"" + name + "\" is weighed, but not drawn.",
                        "Add its outline to the trailer's \"load\" under this name: what is not drawn strikes nothing.");
            }
            requireInside(item, "cg", at, drawn, "\"" + name + "\"");
            // Only what is wrong with this piece keeps it out of the sum.
            if (!name.isEmpty()
                    && at != null
                    && drawn != null
                    && fields.problems().count() == before) {
                pieces.add(new Weights.Piece(
                        name,
                        at,
                        Optional.of(drawn).filter(OutlineFields::isSound).map(OutlineFields::outline)));
            }
        }
        for (String load : loads.keySet()) {
            if (fields.isThere() && !load.isEmpty() && !names.contains(load)) {
                fields.problem(
                        "pieces",
                        "load-not-weighed",
                        "The load \"" + load + "\" is drawn, but not weighed.",
                        "Add a piece with this name: what is not weighed would count as nothing.");
            }
        }
        return pieces;
    }

    private static Map<AxleKind, Double> tracks(JsonFields tracks) {
        Map<AxleKind, Double> byKind = new EnumMap<>(AxleKind.class);
        for (AxleKind kind : AxleKind.values()) {
            tracks.findLengthM(kind.word(), TRACK).ifPresent(m -> byKind.put(kind, m));
        }
        tracks.refuseOthers();
        return byKind;
    }

    private static Weights.Ratings ratings(JsonFields ratings) {
        Map<AxleKind, Double> axles =
                ratings.findObject("axles").map(WeightsReader::byKind).orElse(Map.of());
        Map<AxleKind, Double> tires =
                ratings.findObject("tires").map(WeightsReader::byKind).orElse(Map.of());
        OptionalDouble hitch = ratings.findMassKg("fifthWheel", 1, MOST_KG);
        Map<AxleKind, Double> widths =
                ratings.findObject("tireWidths").map(WeightsReader::widths).orElse(Map.of());
        ratings.refuseOthers();
        return new Weights.Ratings(axles, tires, hitch, widths);
    }

    private static Map<AxleKind, Double> widths(JsonFields kinds) {
        Map<AxleKind, Double> byKind = new EnumMap<>(AxleKind.class);
        for (AxleKind kind : AxleKind.values()) {
            kinds.findLengthM(kind.word(), TIRES).ifPresent(m -> byKind.put(kind, m));
        }
        kinds.refuseOthers();
        return byKind;
    }

    private static Map<AxleKind, Double> byKind(JsonFields kinds) {
        Map<AxleKind, Double> byKind = new EnumMap<>(AxleKind.class);
        for (AxleKind kind : AxleKind.values()) {
            kinds.findMassKg(kind.word(), 1, MOST_KG).ifPresent(kg -> byKind.put(kind, kg));
        }
        kinds.refuseOthers();
        return byKind;
    }

    private Weights.Gauges gauges(JsonFields gauges) {
        Optional<ChartPoints> down = gauges.findObject("trailerDown").flatMap(ChartReader::read);
        Optional<ChartPoints> up = gauges.findObject("trailerUp").flatMap(ChartReader::read);
        Optional<ChartPoints> booster = gauges.findObject("booster").flatMap(ChartReader::read);
        gauges.refuseOthers();
        return new Weights.Gauges(down, up, booster);
    }

    private Weights.Regulator regulator(JsonFields regulator, Weights.Gauges gauges) {
        int before = problems.count();
        double leastPa = regulator.pressurePa("least");
        double mostPa = regulator.pressurePa("most");
        double setPa = regulator.pressurePa("set");
        regulator.refuseOthers();
        if (mostPa < leastPa) {
            regulator.problem("most", "order", "The highest pressure is below the lowest.", "Swap them.");
        }
        if (setPa < leastPa || setPa > mostPa) {
            regulator.problem(
                    "set",
                    "out-of-range",
                    "What is set is beyond what the regulator can be set to.",
                    "Keep it between least and most.");
        }
        Optional<ChartPoints> chart = gauges.booster();
        if (chart.isEmpty() && problems.count() == before) {
            regulator.problem(
                    "set",
                    "no-chart",
                    "A regulator is given, but no sound chart for the booster.",
                    "Add \"booster\" to the gauges: without it a pressure says nothing about the load.");
        } else if (chart.isPresent()) {
            List<ChartPoints.Point> points = chart.get().points();
            if (leastPa < points.get(0).pressurePa()
                    || mostPa > points.get(points.size() - 1).pressurePa()) {
                regulator.problem(
                        leastPa < points.get(0).pressurePa() ? "least" : "most",
                        "beyond-chart",
                        "The regulator can be set to pressures that the booster's chart does not have.",
                        "Extend the chart, or narrow the range.");
            }
        }
        return problems.count() == before && regulator.isThere() ? new Weights.Regulator(leastPa, mostPa, setPa) : null;
    }

    private Weights.ShimSet shims(JsonFields shims) {
        int before = problems.count();
        String fitted = shims.text("fitted", JsonFields.LONGEST_NAME);
        double armM = shims.lengthM("arm", ARM);
        double foldRad = shims.angleRad("fold", 0, MOST_FOLD_RAD);
        double foldKg = shims.massKg("foldLoad", 1, MOST_KG);
        List<Weights.ShimPlate> plates = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (JsonFields item : shims.objects("plates", 1, MOST_PLATES)) {
            String name = item.text("name", JsonFields.LONGEST_NAME);
            double thicknessM = item.lengthM("thickness", PLATE);
            double leastKg = item.massKg("least", 0, MOST_KG);
            double mostKg = item.massKg("most", 0, MOST_KG);
            item.refuseOthers();
            if (!name.isEmpty() && !seen.add(name)) {
                item.problem("name", "shim-twice", "The plate \"" + name + "\" is listed twice.", "Keep one of them.");
            }
            if (mostKg < leastKg) {
                item.problem("most", "order", "The greatest load is below the least.", "Swap them.");
            }
            if (problems.count() == before) {
                plates.add(new Weights.ShimPlate(name, thicknessM, leastKg, mostKg));
            }
        }
        shims.refuseOthers();
        if (!fitted.isEmpty() && !seen.contains(fitted)) {
            shims.problem(
                    "fitted",
                    "no-such-shim",
                    "The fitted plate \"" + fitted + "\" is not among the plates.",
                    seen.isEmpty()
                            ? "List it there."
                            : "List it there, or name one of: " + String.join(", ", seen) + ".");
        }
        return problems.count() == before && shims.isThere()
                ? new Weights.ShimSet(fitted, plates, armM, foldRad, foldKg)
                : null;
    }

    private Weights.FrontLift frontLift(JsonFields lift) {
        int before = problems.count();
        double ratedPa = lift.pressurePa("ratedPressure");
        double ratedKg = lift.massKg("ratedLoad", 1, MOST_KG);
        double takeOffPa = lift.pressurePa("takeOff");
        lift.refuseOthers();
        if (ratedPa == 0) {
            lift.problem(
                    "ratedPressure",
                    "out-of-range",
                    "A pressure of nothing raises nothing.",
                    "Copy it from the maker's plate.");
        }
        return problems.count() == before && lift.isThere() ? new Weights.FrontLift(ratedPa, ratedKg, takeOffPa) : null;
    }
}
