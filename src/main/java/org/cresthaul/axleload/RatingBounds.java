package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.UnitName;
import org.cresthaul.rig.Weights;

/** What the rig itself asks of its loads, wherever it is: ratings, and enough load on every axle that must brake. */
public final class RatingBounds {
    /** The source named beside a rating. */
    public static final String MAKER = "the maker's rating";

    /** The source named beside the range of a plate. */
    public static final String PLATES = "the maker's range of the plate";

    private RatingBounds() {}

    /** Bounds on axles at {@code places}, front to rear. */
    public static List<LoadBound> on(List<AxlePlace> places, Weights weights) {
        List<LoadBound> bounds = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            AxleKind kind = places.get(i).kind();
            Double axleKg = weights.ratings().axleKg().get(kind);
            if (axleKg != null) {
                bounds.add(LoadBound.most(kind.word() + " axle rating", MAKER, i, i, axleKg));
            }
            Double tiresKg = weights.ratings().tiresKg().get(kind);
            if (tiresKg != null) {
                bounds.add(LoadBound.most(kind.word() + " tire rating", MAKER, i, i, tiresKg));
            }
            boolean braked = weights.leastBrakedKg().isPresent()
                    && weights.leastBrakedKg().getAsDouble() > 0;
            bounds.add(new LoadBound(
                    braked ? "least load on a braked axle" : "no axle carried",
                    braked ? "the rig's weight data" : "equilibrium",
                    LoadBound.Part.AXLES,
                    i,
                    i,
                    braked ? weights.leastBrakedKg().getAsDouble() : 0,
                    true));
        }
        weights.shims().ifPresent(s -> plate(bounds, places, s.find(s.fitted()).orElseThrow()));
        for (int w = 0; w <= weights.jeeps().size(); w++) {
            addFifthWheel(bounds, weights, w);
        }
        return bounds;
    }

    private static void addFifthWheel(List<LoadBound> bounds, Weights weights, int w) {
        String of = weights.jeeps().isEmpty() ? "" : ", " + owner(w);
        weights.ratings()
                .hitchKg()
                .ifPresent(kg -> bounds.add(
                        new LoadBound("fifth wheel rating" + of, MAKER, LoadBound.Part.HITCH, w, w, kg, false)));
        bounds.add(new LoadBound("load on the fifth wheel" + of, "equilibrium", LoadBound.Part.HITCH, w, w, 0, true));
    }

    /** The unit that a fifth wheel is on, the tractor's being 0. */
    public static String owner(int fifthWheel) {
        return fifthWheel == 0
                ? UnitName.TRACTOR.word()
                : UnitName.jeep(fifthWheel).word();
    }

    /** The plate that is fitted is made for a range of loads on the axle of a trailing booster. */
    private static void plate(List<LoadBound> bounds, List<AxlePlace> places, Weights.ShimPlate plate) {
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).group().kind() == AxleKind.BOOSTER) {
                String rule = "fitted plate, " + plate.name();
                bounds.add(new LoadBound(rule, PLATES, LoadBound.Part.AXLES, i, i, plate.leastKg(), true));
                bounds.add(LoadBound.most(rule, PLATES, i, i, plate.mostKg()));
            }
        }
    }

    /**
     * What the heavier side of each axle asks of its tires, for axles whose tracks are known: twice that side against
     * what the tires of the axle are rated for together.
     *
     * @param charted as in {@link LoadTest#all}
     */
    public static List<LoadTest> onSides(AxleLoads loads, List<AxleLoads> charted, Weights weights) {
        List<LoadTest> tests = new ArrayList<>();
        for (int i = 0; i < loads.axles().size(); i++) {
            AxleLoads.AxleLoad axle = loads.axles().get(i);
            Double tiresKg = weights.ratings().tiresKg().get(axle.place().kind());
            if (tiresKg != null && axle.heavierSideKg().isPresent()) {
                double sideKg = axle.heavierSideKg().getAsDouble();
                int at = i;
                tests.add(new LoadTest(
                        LoadBound.most(
                                axle.place().kind().word() + " tire rating, heavier side", MAKER, i, i, tiresKg / 2),
                        sideKg,
                        charted.stream()
                                .mapToDouble(c -> Math.abs(
                                        c.axles().get(at).heavierSideKg().orElse(sideKg) - sideKg))
                                .max()
                                .orElse(0)));
            }
        }
        return tests;
    }
}
