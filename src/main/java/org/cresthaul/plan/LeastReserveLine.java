package org.cresthaul.plan;

/** The least reserve of a plan in one line, the same on every paper. */
final class LeastReserveLine {
    private LeastReserveLine() {}

    static SheetLine of(Sources sources) {
        LeastReserve least = sources.plan().least();
        Say say = sources.say("Least reserve anywhere: ");
        if (least.share() == null) {
            return say.words("unknown.").plain();
        }
        say.share(least.share(), "plan:/least/share")
                .words(" of what is required or allowed, at " + least.shareAt() + " ("
                        + least.shareKind().where() + ")");
        if (least.lengthM() != null) {
            say.words("; in length ")
                    .gap(least.lengthM(), "plan:/least/lengthM")
                    .words(" beyond what is required, at " + least.lengthAt() + " ("
                            + least.lengthKind().where() + ")");
        }
        return say.words(
                        least.unknownAt().isEmpty()
                                ? "."
                                : "; unknown at " + String.join(", ", least.unknownAt()) + ".")
                .plain();
    }
}
