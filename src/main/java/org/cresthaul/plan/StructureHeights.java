package org.cresthaul.plan;

import java.util.Optional;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Measured;

/**
 * The heights a driver and a clerk compare at a low structure: the sign or the soffit, and the load under it as it
 * passes.
 */
final class StructureHeights {
    static final String CODE = "structure heights";

    private final Sources sources;

    StructureHeights(Sources sources) {
        this.sources = sources;
    }

    /** One line at a structure; empty elsewhere. */
    Optional<SheetLine> line(Plan.Passage p) {
        return sources.route()
                .findHazard(p.hazard())
                .filter(LowStructure.class::isInstance)
                .map(LowStructure.class::cast)
                .map(s -> line(p, s));
    }

    private SheetLine line(Plan.Passage p, LowStructure structure) {
        Say say = sources.say();
        if (structure.leastHeightM().isEmpty()) {
            say.words("Height of the structure: unknown");
        } else {
            say.words(
                            structure.measured() == Measured.POSTED
                                    ? "Sign "
                                    : structure.measured() == Measured.SURVEYED
                                            ? "Soffit over the road, surveyed, "
                                            : structure.measured() == Measured.REPORTED
                                                    ? "Height reported, not measured, "
                                                    : "Height, unknown how it was measured, ")
                    .gap(structure.leastHeightM().getAsDouble(), "route:least height of " + p.hazard());
        }
        double frontM = sources.mostFrontM(p);
        double rearM = p.raise() == null ? 0 : p.raise().rearM();
        say.words("; " + (sources.equipment().isLoaded() ? "load" : "combination") + " at notch "
                        + p.set().notch() + (p.raise() == null ? "" : ", raised as far as it may be")
                        + ", on the level, ")
                .required(
                        sources.equipment().isLoaded()
                                ? sources.loadHeightM(p.set(), frontM, rearM)
                                : sources.heightM(p.set(), frontM, rearM),
                        "rig:highest point at this set-up");
        return say.words(".").plain().as(CODE);
    }
}
