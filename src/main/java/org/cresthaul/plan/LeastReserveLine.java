package org.cresthaul.plan;

import java.util.Map;

/** The least reserve of a plan in one line, the same on every paper. */
final class LeastReserveLine {
    private static final Map<String, String> KINDS = Map.of(
            CellSpares.GROUND, "over the ground",
            CellSpares.OVERHEAD, "under the structure",
            CellSpares.UNITS, "between the units",
            CellSpares.CORNER, "beside",
            CellSpares.LOAD, "load",
            Plan.Spare.RAISED, "raised as little as will do");

    private LeastReserveLine() {}

    static SheetLine of(Sources sources) {
        LeastReserve least = sources.plan().least();
        Say say = sources.say("Least reserve anywhere: ");
        if (least.share() == null) {
            return say.words("unknown.").plain();
        }
        say.share(least.share(), "plan:/least/share")
                .words(" of what is required or allowed, at " + least.shareAt() + " (" + KINDS.get(least.shareKind())
                        + ")");
        if (least.lengthM() != null) {
            say.words("; in length ")
                    .gap(least.lengthM(), "plan:/least/lengthM")
                    .words(" beyond what is required, at " + least.lengthAt() + " (" + KINDS.get(least.lengthKind())
                            + ")");
        }
        return say.words(
                        least.unknownAt().isEmpty()
                                ? "."
                                : "; unknown at " + String.join(", ", least.unknownAt()) + ".")
                .plain();
    }
}
