package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Which parts of a combination pass over raised ground on the way round a corner. Not safe to share between threads.
 */
public final class Overhangs {
    private final CornerSpace space;
    private final Track track;

    public Overhangs(CornerSpace space, CornerFit fit) {
        this.space = space;
        track = Following.along(fit.combination().chain(), fit.path());
    }

    /** Where each part comes over its ground first; empty for those that never are. */
    public List<Optional<CornerFit.Gap>> find(List<LowPart> parts) {
        List<PassingPart> passing = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            LowPart part = parts.get(i);
            // Named by its number: each is asked on its own.
            passing.add(new PassingPart(
                    part.unit(),
                    Integer.toString(i),
                    part.rearM(),
                    part.frontM(),
                    -part.halfWidthM(),
                    part.halfWidthM(),
                    space.raised(part.island())));
        }
        passing.removeIf(p -> p.off().isEmpty() || !(p.leftM() > 0));
        List<Optional<CornerFit.Gap>> found = new ArrayList<>(Collections.nCopies(parts.size(), Optional.empty()));
        for (CornerFit.Gap gap : PassageRoom.entered(track, passing)) {
            if (gap.valueM() < 0) {
                found.set(Integer.parseInt(gap.part()), Optional.of(gap));
            }
        }
        return found;
    }
}
