package org.cresthaul.sheet;

import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.plan.Plan;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.LowStructure.Measured;
import org.cresthaul.route.Overhead;

/**
 * The heights a driver and a clerk compare at a low structure: the sign or the soffit, and the load under it as it
 * passes.
 */
final class StructureHeights {
    private final Sources sources;

    StructureHeights(Sources sources) {
        this.sources = sources;
    }

    /** One line at a structure; empty elsewhere. */
    Optional<SheetLine> line(Plan.HazardPassage p) {
        return sources.route()
                .findHazard(p.hazard())
                .filter(Overhead.class::isInstance)
                .map(Overhead.class::cast)
                .map(o -> line(p, o));
    }

    private SheetLine line(Plan.HazardPassage p, Overhead over) {
        LowStructure structure = over.height();
        boolean wire = over.kind() == HazardKind.OVERHEAD_WIRE;
        Say above = structure.leastHeightM().isEmpty()
                ? sources.say(wire ? Code.HEIGHT_WIRE_UNKNOWN : Code.HEIGHT_STRUCTURE_UNKNOWN)
                : sources.say(how(structure.measured(), wire))
                        .at("gap")
                        .gap(structure.leastHeightM().getAsDouble(), "route:least height of " + p.hazard());
        double frontM = sources.mostFrontM(p);
        double rearM = p.raise() == null ? 0 : p.raise().rearM();
        boolean loaded = sources.equipment().isLoaded();
        return sources.say(Code.HEIGHTS)
                .with("structure", above)
                .with(
                        "combination",
                        sources.say(under(loaded, p.raise() != null))
                                .with("notch", p.set().notch()))
                .at("height")
                .required(
                        loaded ? sources.loadHeightM(p.set(), frontM, rearM) : sources.heightM(p.set(), frontM, rearM),
                        "rig:highest point at this set-up")
                .plain()
                .as(SheetTopic.HEIGHTS);
    }

    private static Code under(boolean loaded, boolean raised) {
        if (loaded) {
            return raised ? Code.HEIGHT_LOAD_RAISED : Code.HEIGHT_LOAD;
        }
        return raised ? Code.HEIGHT_COMBINATION_RAISED : Code.HEIGHT_COMBINATION;
    }

    private static Code how(Measured measured, boolean wire) {
        return switch (measured) {
            case POSTED -> Code.HEIGHT_POSTED;
            case SURVEYED -> wire ? Code.HEIGHT_WIRE_SURVEYED : Code.HEIGHT_SOFFIT;
            case DECLARED -> Code.HEIGHT_DECLARED;
            case REPORTED -> Code.HEIGHT_REPORTED;
            case UNKNOWN -> Code.HEIGHT_HOW_UNKNOWN;
        };
    }
}
