package org.cresthaul.sheet;

import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.LeastReserve;

/** The least reserve of a plan in one line, the same on every paper. */
final class LeastReserveLine {
    private LeastReserveLine() {}

    static SheetLine of(Sources sources) {
        LeastReserve least = sources.plan().least();
        if (least.share() == null) {
            return sources.plain(Code.RESERVE_UNKNOWN);
        }
        Say say = sources.say(Code.RESERVE_SHARE)
                .at("share")
                .share(least.share(), "plan:/least/share")
                .with("place", least.shareAt())
                .with("where", Sentence.word(least.shareKind()));
        if (least.lengthM() != null) {
            say.and(Code.RESERVE_LENGTH)
                    .at("gap")
                    .gap(least.lengthM(), "plan:/least/lengthM")
                    .with("place", least.lengthAt())
                    .with("where", Sentence.word(least.lengthKind()));
        }
        return (least.unknownAt().isEmpty()
                        ? say.and(Code.RESERVE_END)
                        : say.and(Code.RESERVE_UNKNOWN_AT).with("places", String.join(", ", least.unknownAt())))
                .plain();
    }
}
