package org.cresthaul.rig;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;

/**
 * What the parts of a combination weigh in one stance, and what its axles, gauges and hydraulics may carry and show. A
 * stance without it has loads that are not known.
 *
 * @param accuracy how far a load may be from what these weights give, as a share of it (95 %)
 * @param source where the weights come from, in words
 * @param tractor all of the tractor, in its frame
 * @param jeeps each jeep, in its own frame
 * @param trailer the trailer without gooseneck, load and booster, in its frame
 * @param gooseneck in the trailer's frame
 * @param booster the booster, when the rig has one
 * @param boostersBehind each booster behind that one, in its own frame
 * @param pieces what lies on the deck
 * @param tracks distance between the centers of the left and right tires, by unit; empty when nothing is off-center
 * @param ratings what axles, tires and the hitch are made for
 * @param leastBrakedKg least load on every axle that must brake
 * @param gauges pressure charts
 * @param regulator the booster's regulator
 * @param shims the plates for the booster joint
 * @param frontLift the hydraulics that raise the loaded front
 */
public record Weights(
        double accuracy,
        String source,
        MassPoint tractor,
        List<MassPoint> jeeps,
        MassPoint trailer,
        MassPoint gooseneck,
        Optional<BoosterWeight> booster,
        List<BoosterBehind> boostersBehind,
        List<Piece> pieces,
        Map<AxleKind, Double> tracks,
        Ratings ratings,
        OptionalDouble leastBrakedKg,
        Gauges gauges,
        Optional<Regulator> regulator,
        Optional<ShimSet> shims,
        Optional<FrontLift> frontLift) {
    /** A weight at its center of gravity; {@code offsetM} is positive to the right of the center line. */
    public record MassPoint(double massKg, double xM, double hM, double offsetM) {
        public MassPoint {
            Finite.requireAtLeast("massKg", 0, massKg);
            Finite.require("xM", xM);
            Finite.requireAtLeast("hM", 0, hM);
            Finite.require("offsetM", offsetM);
        }

        /** The same weight moved along the unit by {@code dxM}. */
        public MassPoint shiftedBy(double dxM) {
            return new MassPoint(massKg, xM + dxM, hM, offsetM);
        }

        public MassPoint withMassKg(double otherKg) {
            return new MassPoint(otherKg, xM, hM, offsetM);
        }
    }

    /**
     * The booster's weight.
     *
     * @param standing on its axle, in its own frame
     * @param carried where its weight acts when it lies on the deck, in the trailer's frame
     */
    public record BoosterWeight(MassPoint standing, Optional<MassPoint> carried) {}

    /**
     * A booster behind another, whose air is set once.
     *
     * @param standing in its own frame
     * @param gauge chart of its own bags against the load of one axle
     * @param setPa what its regulator is set to, within the chart
     */
    public record BoosterBehind(MassPoint standing, ChartPoints gauge, double setPa) {
        public BoosterBehind {
            List<ChartPoints.Point> points = gauge.points();
            if (!(setPa >= points.get(0).pressurePa()
                    && setPa <= points.get(points.size() - 1).pressurePa())) {
                throw new IllegalArgumentException("the chart does not say what " + setPa + " Pa carry");
            }
        }
    }

    /**
     * Something that lies on the deck.
     *
     * @param name as in the stance's load
     * @param at its weight, in the trailer's frame
     * @param outline its outline there, when the stance draws it
     */
    public record Piece(String name, MassPoint at, Optional<Outline> outline) {
        public Piece shiftedBy(double dxM) {
            return new Piece(name, at.shiftedBy(dxM), outline.map(o -> o.shiftedBy(dxM)));
        }
    }

    /**
     * What the maker rates.
     *
     * @param axleKg most on one axle, by kind
     * @param tiresKg most on the tires of one axle together, by kind
     * @param hitchKg most on the fifth wheel
     * @param tireWidthsM nominal width of all tires of one axle together, by kind
     */
    public record Ratings(
            Map<AxleKind, Double> axleKg,
            Map<AxleKind, Double> tiresKg,
            OptionalDouble hitchKg,
            Map<AxleKind, Double> tireWidthsM) {
        /** Tires whose width nobody wrote down. */
        public Ratings(Map<AxleKind, Double> axleKg, Map<AxleKind, Double> tiresKg, OptionalDouble hitchKg) {
            this(axleKg, tiresKg, hitchKg, Map.of());
        }

        private Ratings withoutJeep() {
            return new Ratings(
                    Weights.withoutJeep(axleKg),
                    Weights.withoutJeep(tiresKg),
                    hitchKg,
                    Weights.withoutJeep(tireWidthsM));
        }

        public Ratings {
            axleKg = ordered(axleKg);
            tiresKg = ordered(tiresKg);
            tireWidthsM = ordered(tireWidthsM);
        }
    }

    /**
     * Pressure charts, each against the load of one axle.
     *
     * @param trailerDown trailer group with every axle down
     * @param trailerUp trailer group with the lift axle up
     * @param booster the booster's own bags, regulated
     */
    public record Gauges(
            Optional<ChartPoints> trailerDown, Optional<ChartPoints> trailerUp, Optional<ChartPoints> booster) {
        public static final Gauges NONE = new Gauges(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * The regulator that sets the load of a trailing booster.
     *
     * @param leastPa lowest pressure that may be set
     * @param mostPa highest
     * @param setPa what is set
     */
    public record Regulator(double leastPa, double mostPa, double setPa) {
        public Regulator {
            Finite.requireAtLeast("leastPa", 0, leastPa);
            Finite.requireAtLeast("mostPa", leastPa, mostPa);
            Finite.requireAtLeast("setPa", 0, setPa);
        }
    }

    /**
     * The plates at the booster joint and the joint itself.
     *
     * @param fitted the name of the one that is in
     * @param shims each that the rig has, by distinct names; one without thickness stands for no plate at all
     * @param armM from the joint's pin to the plate: a plate of thickness t turns the beam by t / armM
     * @param foldRad by how much the joint folds, tail up, under {@code foldKg} on the booster's axle
     * @param foldKg the load at which {@code foldRad} was measured
     */
    public record ShimSet(String fitted, List<ShimPlate> shims, double armM, double foldRad, double foldKg) {
        public ShimSet {
            shims = List.copyOf(shims);
            Finite.requireAtLeast("armM", 1e-3, armM);
            Finite.requireAtLeast("foldKg", 1, foldKg);
            Finite.requireAtLeast("foldRad", 0, foldRad);
            if (shims.stream().map(ShimPlate::name).distinct().count() != shims.size()
                    || shims.stream().noneMatch(s -> s.name().equals(fitted))) {
                throw new IllegalArgumentException("shims must be distinct, with the fitted one among them: " + shims);
            }
        }

        public Optional<ShimPlate> find(String name) {
            return shims.stream().filter(s -> s.name().equals(name)).findFirst();
        }
    }

    /** A plate by the name the rig file gives it, its thickness, and the booster axle loads it is meant for. */
    public record ShimPlate(String name, double thicknessM, double leastKg, double mostKg) {
        public ShimPlate {
            Finite.requireAtLeast("thicknessM", 0, thicknessM);
            Finite.requireAtLeast("leastKg", 0, leastKg);
            Finite.requireAtLeast("mostKg", leastKg, mostKg);
        }
    }

    /**
     * The hydraulics at the gooseneck.
     *
     * @param ratedPa pressure that raises the rated load
     * @param ratedKg load on the deck front it raises then
     * @param takeOffPa what the truck's power take-off delivers
     */
    public record FrontLift(double ratedPa, double ratedKg, double takeOffPa) {
        public FrontLift {
            Finite.requireAtLeast("ratedPa", 1, ratedPa);
            Finite.requireAtLeast("ratedKg", 1, ratedKg);
            Finite.requireAtLeast("takeOffPa", 0, takeOffPa);
        }
    }

    public Weights {
        Finite.requireAtLeast("accuracy", 0, accuracy);
        jeeps = List.copyOf(jeeps);
        boostersBehind = List.copyOf(boostersBehind);
        pieces = List.copyOf(pieces);
        tracks = ordered(tracks);
        if (pieces.stream().map(Piece::name).distinct().count() != pieces.size()) {
            throw new IllegalArgumentException("two pieces have the same name");
        }
    }

    /** In the order of the axles along the combination, whatever map it was given in. */
    private static Map<AxleKind, Double> ordered(Map<AxleKind, Double> values) {
        return values.isEmpty() ? Map.of() : java.util.Collections.unmodifiableMap(new EnumMap<>(values));
    }

    /** With so many of the jeeps and of the boosters behind the first, those at the front. */
    Weights ofFirst(int jeepCount, int behindCount) {
        return new Weights(
                accuracy,
                source,
                tractor,
                jeeps.subList(0, jeepCount),
                trailer,
                gooseneck,
                booster,
                boostersBehind.subList(0, behindCount),
                pieces,
                jeepCount == 0 ? withoutJeep(tracks) : tracks,
                jeepCount == 0 ? ratings.withoutJeep() : ratings,
                leastBrakedKg,
                gauges,
                regulator,
                shims,
                frontLift);
    }

    private static Map<AxleKind, Double> withoutJeep(Map<AxleKind, Double> values) {
        Map<AxleKind, Double> others = new EnumMap<>(AxleKind.class);
        others.putAll(values);
        others.remove(AxleKind.JEEP);
        return ordered(others);
    }

    public Weights withPieces(List<Piece> others) {
        return new Weights(
                accuracy,
                source,
                tractor,
                jeeps,
                trailer,
                gooseneck,
                booster,
                boostersBehind,
                others,
                tracks,
                ratings,
                leastBrakedKg,
                gauges,
                regulator,
                shims,
                frontLift);
    }
}
