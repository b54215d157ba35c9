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
        List<Integer> asked = new ArrayList<>();
        List<PassingPart> passing = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            LowPart part = parts.get(i);
            KeepOff raised = space.raised(part.island());
            if (!raised.isEmpty() && part.halfWidthM() > 0) {
                asked.add(i);
                passing.add(new PassingPart(
                        part.unit(),
                        part.part(),
                        part.rearM(),
                        part.frontM(),
                        -part.halfWidthM(),
                        part.halfWidthM(),
                        raised));
            }
        }
        List<Optional<CornerFit.Gap>> entered = PassageRoom.entered(track, passing);
        List<Optional<CornerFit.Gap>> found = new ArrayList<>(Collections.nCopies(parts.size(), Optional.empty()));
        for (int k = 0; k < entered.size(); k++) {
            found.set(asked.get(k), entered.get(k));
        }
        return found;
    }
}
