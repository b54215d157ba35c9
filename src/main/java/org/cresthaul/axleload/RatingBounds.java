package org.cresthaul.axleload;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.rig.UnitName;
import org.cresthaul.rig.Weights;

/** What the rig itself asks of its loads, wherever it is: ratings, and enough load on every axle that must brake. */
public final class RatingBounds {
    /** The source named beside a rating. */
    public static final Sentence MAKER = Sentence.of(Code.SOURCE_MAKER);

    /** The source named beside the range of a plate. */
    public static final Sentence PLATES = Sentence.of(Code.SOURCE_PLATES);

    private RatingBounds() {}

    /** Bounds on axles at {@code places}, front to rear. */
    public static List<LoadBound> on(List<AxlePlace> places, Weights weights) {
        List<LoadBound> bounds = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            AxleKind kind = places.get(i).kind();
            Double axleKg = weights.ratings().axleKg().get(kind);
            if (axleKg != null) {
                bounds.add(LoadBound.most(rating(Code.RULE_AXLE_RATING, kind), MAKER, i, i, axleKg));
            }
            Double tiresKg = weights.ratings().tiresKg().get(kind);
            if (tiresKg != null) {
                bounds.add(LoadBound.most(rating(Code.RULE_TIRE_RATING, kind), MAKER, i, i, tiresKg));
            }
            boolean braked = weights.leastBrakedKg().isPresent()
                    && weights.leastBrakedKg().getAsDouble() > 0;
            bounds.add(new LoadBound(
                    Sentence.of(braked ? Code.RULE_LEAST_BRAKED : Code.RULE_NO_AXLE_CARRIED),
                    Sentence.of(braked ? Code.SOURCE_WEIGHTS : Code.SOURCE_EQUILIBRIUM),
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
        weights.ratings()
                .hitchKg()
                .ifPresent(kg -> bounds.add(new LoadBound(
                        fifthWheel(weights, w, Code.RULE_FIFTH_WHEEL_RATING, Code.RULE_FIFTH_WHEEL_RATING_OF),
                        MAKER,
                        LoadBound.Part.HITCH,
                        w,
                        w,
                        kg,
                        false)));
        bounds.add(new LoadBound(
                fifthWheel(weights, w, Code.RULE_FIFTH_WHEEL_LOAD, Code.RULE_FIFTH_WHEEL_LOAD_OF),
                Sentence.of(Code.SOURCE_EQUILIBRIUM),
                LoadBound.Part.HITCH,
                w,
                w,
                0,
                true));
    }

    /** With jeeps there are several: then it is said which. */
    private static Sentence fifthWheel(Weights weights, int w, Code only, Code ofSeveral) {
        return weights.jeeps().isEmpty()
                ? Sentence.of(only)
                : Sentence.of(ofSeveral).with("unit", Names.of(owner(w)));
    }

    /** The unit that a fifth wheel is on, the tractor's being 0. */
    public static String owner(int fifthWheel) {
        return fifthWheel == 0
                ? UnitName.TRACTOR.word()
                : UnitName.jeep(fifthWheel).word();
    }

    private static Sentence rating(Code rule, AxleKind kind) {
        return Sentence.of(rule).with("kind", Sentence.word(kind));
    }

    /** The plate that is fitted is made for a range of loads on each axle of the trailing booster. */
    private static void plate(List<LoadBound> bounds, List<AxlePlace> places, Weights.ShimPlate plate) {
        for (int i = 0; i < places.size(); i++) {
            if (places.get(i).group().equals(new LoadGroup(AxleKind.BOOSTER))) {
                Sentence rule = Sentence.of(Code.RULE_PLATE).with("plate", plate.name());
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
                                rating(Code.RULE_TIRE_RATING_SIDE, axle.place().kind()), MAKER, i, i, tiresKg / 2),
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
