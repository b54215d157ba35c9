package org.cresthaul.sheet;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.TurningWheels;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.UnitName;
import org.cresthaul.rig.Weights;

/** What a combination has, of which a card may speak; from the rig file's data, never from a name in it. */
final class Equipment {
    /** Heavy vehicles, equipment and machinery: 10,000 lb, 49 CFR 393.130(a). */
    static final double HEAVY_KG = 10_000 * 0.45359237;

    private final LevelStance stance;

    Equipment(LevelStance stance) {
        this.stance = stance;
    }

    /** Whether something stands on the deck besides a carried booster. */
    boolean isLoaded() {
        return !stance.trailer().load().isEmpty()
                || stance.weights().map(w -> !w.pieces().isEmpty()).orElse(false);
    }

    /** Whether a piece of the load is that heavy, or nobody has said how heavy the load is. */
    boolean isHeavyLoaded() {
        return isLoaded() && stance.weights().isEmpty()
                || stance.weights().stream()
                        .flatMap(w -> w.pieces().stream())
                        .map(Weights.Piece::at)
                        .anyMatch(at -> at.massKg() >= HEAVY_KG);
    }

    /** The axles whose wheels caster. */
    Optional<Sentence> castering() {
        return TurningWheels.of(stance).castering();
    }

    boolean hasLiftAxle() {
        return !stance.trailer().lift().isEmpty();
    }

    /** Several, so that they must be told apart. */
    boolean hasLiftAxles() {
        return stance.trailer().lift().axles().size() > 1;
    }

    boolean hasBooster() {
        return stance.booster().isPresent();
    }

    /** Those behind the first. */
    List<UnitName> boostersBehind() {
        return stance.units().stream()
                .filter(u -> u.kind() == UnitName.Kind.BOOSTER && u.number() > 1)
                .toList();
    }

    boolean hasJeep() {
        return !stance.jeeps().isEmpty();
    }

    boolean has(BoosterState state) {
        return hasBooster() && stance.boosterStates().contains(state);
    }

    /** Whether the rig file knows of plates for the booster joint. */
    boolean hasPlates() {
        return stance.weights()
                .flatMap(Weights::shims)
                .map(s -> s.shims().stream().anyMatch(p -> p.thicknessM() > 0))
                .orElse(false);
    }
}
