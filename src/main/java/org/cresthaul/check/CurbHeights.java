package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.posture.LevelUnderside;
import org.cresthaul.posture.LevelUnderside.Slice;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.Corner;
import org.cresthaul.turning.LowPart;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.cresthaul.turning.UnitPart;

/**
 * What a setting may carry over raised ground beside a corner. Undersides are taken over level ground, slice by slice,
 * as wide as the widest body there.
 */
final class CurbHeights {
    private final Corner.Ground ground;
    private final TurningCombination combination;
    private final TurningCombination free;
    private final List<Slice> slices;

    /**
     * @param free with every coupling free
     * @param combination the same, or with the booster's pivot locked
     */
    CurbHeights(
            Corner corner,
            LevelStance stance,
            Setting setting,
            TurningCombination free,
            TurningCombination combination) {
        ground = corner.ground();
        this.free = free;
        this.combination = combination;
        slices = LevelUnderside.listOf(stance, setting);
    }

    /** Raised ground: an island by its number, or whatever lies beyond the edge. */
    record Zone(int island, OptionalDouble heightM) {}

    List<Zone> zones() {
        List<Zone> zones = new ArrayList<>();
        zones.add(new Zone(LowPart.BEYOND_EDGE, ground.edgeHeightM()));
        for (int i = 0; i < ground.islands().size(); i++) {
            zones.add(new Zone(i, ground.islands().get(i).heightM()));
        }
        return zones;
    }

    /**
     * Parts that do not pass over some of it.
     *
     * @param gapM that must be left above it
     * @param trustUnknown whether ground of unknown height is taken to be low enough
     */
    List<LowPart> low(double gapM, boolean trustUnknown) {
        List<LowPart> low = new ArrayList<>();
        for (Zone zone : zones()) {
            if (zone.heightM.isEmpty() && trustUnknown) {
                continue;
            }
            double most = zone.heightM.orElse(Double.POSITIVE_INFINITY) + gapM;
            List<LowPart> here = new ArrayList<>();
            for (Slice slice : slices) {
                if (slice.heightM() < most) {
                    join(here, part(slice, zone.island));
                }
            }
            low.addAll(here);
        }
        return List.copyOf(low);
    }

    /** Neighbors of one width are one part. */
    private static void join(List<LowPart> parts, LowPart next) {
        if (!parts.isEmpty()) {
            LowPart last = parts.get(parts.size() - 1);
            if (last.unit() == next.unit()
                    && last.halfWidthM() == next.halfWidthM()
                    && Math.abs(last.frontM() - next.rearM()) < 1e-9) {
                parts.set(
                        parts.size() - 1,
                        new LowPart(
                                last.unit(),
                                last.part(),
                                last.rearM(),
                                next.frontM(),
                                last.halfWidthM(),
                                last.island()));
                return;
            }
        }
        parts.add(next);
    }

    LowPart part(Slice slice, int island) {
        PlanUnit unit = combination.units().get(unitOf(slice));
        double axleXM = free.units().get(slice.unit()).axleXM() - lockedBackM(slice.unit());
        double rear = slice.rearXM() - axleXM;
        double front = slice.frontXM() - axleXM;
        double half = 0;
        for (Body body : unit.bodies()) {
            if (body.rearM() <= front && body.frontM() >= rear) {
                half = Math.max(half, body.halfWidthM());
            }
        }
        return new LowPart(unitOf(slice), UnitPart.BODY.of(unit.name()), rear, front, half, island);
    }

    /** Which unit of the combination a slice turns with: a locked booster's with the trailer. */
    int unitOf(Slice slice) {
        return Math.min(slice.unit(), combination.units().size() - 1);
    }

    /**
     * How far the effective axle that a unit turns about lies behind its own: with locked pivots trailer and boosters
     * share one.
     */
    private double lockedBackM(int unit) {
        int locked = combination.units().size() - 1;
        if (combination.units().size() == free.units().size() || unit < locked) {
            return 0;
        }
        double own = free.chain().get(locked).hitchToAxleM();
        for (int k = locked + 1; k <= unit; k++) {
            own += free.chain().get(k - 1).couplingBehindM()
                    + free.chain().get(k).hitchToAxleM();
        }
        return combination.chain().get(locked).hitchToAxleM() - own;
    }

    List<Slice> slices() {
        return slices;
    }
}
