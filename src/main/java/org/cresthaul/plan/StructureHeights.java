package org.cresthaul.plan;

import java.util.Optional;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.route.Overhead;

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
                .filter(Overhead.class::isInstance)
                .map(Overhead.class::cast)
                .map(o -> line(p, o));
    }

    private SheetLine line(Plan.Passage p, Overhead over) {
        LowStructure structure = over.height();
        boolean wire = over.kind() == HazardKind.OVERHEAD_WIRE;
        Say say = sources.say();
        if (structure.leastHeightM().isEmpty()) {
            say.words(wire ? "Height of the wire: unknown" : "Height of the structure: unknown");
        } else {
            say.words(how(structure.measured(), wire))
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

    private static String how(Measured measured, boolean wire) {
        return switch (measured) {
            case POSTED -> "Sign ";
            case SURVEYED -> wire ? "Wire over the road at its lowest, surveyed, " : "Soffit over the road, surveyed, ";
            case DECLARED -> "Wire over the road at its lowest, as its owner declares, ";
            case REPORTED -> "Height reported, not measured, ";
            case UNKNOWN -> "Height, unknown how it was measured, ";
        };
    }
}
