package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a person with a tape finds on a combination that stands in its level stance, worked out from the file: distances
 * from part to part and heights over the ground, to be read beside the notes of whoever measured. Two figures of the
 * file that were exchanged show here as distances that are on no truck.
 */
public final class TapeMeasures {
    private final List<Measure> measures = new ArrayList<>();

    private TapeMeasures() {}

    /**
     * One reading of the tape.
     *
     * @param what from where to where, or the height of what
     * @param meters never negative, but for what lies behind where it is looked for
     */
    public record Measure(String what, double meters) {}

    /** Front to rear, then heights. */
    public static List<Measure> of(LevelStance stance) {
        TapeMeasures tape = new TapeMeasures();
        tape.tractor(stance.tractor());
        for (int i = 0; i < stance.jeeps().size(); i++) {
            tape.jeep(UnitName.jeep(i + 1), stance.jeeps().get(i));
        }
        tape.trailer(stance.trailer());
        for (int i = 0; i < stance.boosters().size(); i++) {
            tape.booster(UnitName.booster(i + 1), stance.boosters().get(i), stance.trailer());
        }
        tape.heights(stance);
        return List.copyOf(tape.measures);
    }

    private void add(String what, double meters) {
        measures.add(new Measure(what, meters));
    }

    private void axles(String first, double fromM, String kind, List<Axle> axles) {
        double before = fromM;
        String name = first;
        for (int i = 0; i < axles.size(); i++) {
            String next = kind + " axle " + (i + 1);
            add(name + " to " + next, before - axles.get(i).xM());
            before = axles.get(i).xM();
            name = next;
        }
    }

    private void tractor(Tractor t) {
        List<Axle> drive = t.drive().axles();
        add(
                "front of the tractor to steer axle",
                Math.max(t.underside().frontXM(), t.topside().frontXM())
                        - t.steer().xM());
        axles("steer axle", t.steer().xM(), "drive", drive);
        double lastM = drive.get(drive.size() - 1).xM();
        add("fifth wheel ahead of drive axle " + drive.size(), t.fifthWheel().xM() - lastM);
        add(
                "drive axle " + drive.size() + " to rear of the tractor",
                lastM - Math.min(t.underside().rearXM(), t.topside().rearXM()));
    }

    private void jeep(UnitName name, Jeep jeep) {
        List<Axle> axles = jeep.axles().axles();
        axles("kingpin of " + name.told(), jeep.kingpinXM(), name.word(), axles);
        double lastM = axles.get(axles.size() - 1).xM();
        add(
                "fifth wheel of " + name.told() + " ahead of its axle " + axles.size(),
                jeep.fifthWheel().xM() - lastM);
    }

    private void trailer(Trailer t) {
        add("kingpin to deck front", t.kingpinXM() - t.deckFront().xM());
        add("deck front to deck rear", t.deckFront().xM() - t.deckRear().xM());
        List<Axle> axles = t.axles().axles();
        axles("kingpin", t.kingpinXM(), "trailer", axles);
        double lastM = axles.get(axles.size() - 1).xM();
        add(
                "trailer axle " + axles.size() + " to rear of the trailer",
                lastM - Math.min(t.underside().rearXM(), t.topside().rearXM()));
        t.boosterHinge().ifPresent(h -> add("trailer axle " + axles.size() + " to booster hinge", lastM - h.xM()));
        for (int i = 0; i < t.load().size(); i++) {
            Outline load = t.load().get(i);
            add(
                    "front of load outline " + (i + 1) + " behind the deck front",
                    t.deckFront().xM() - load.frontXM());
            add("length of load outline " + (i + 1), load.frontXM() - load.rearXM());
        }
    }

    private void booster(UnitName name, Booster b, Trailer t) {
        List<Axle> own = b.axles().axles();
        if (own.size() == 1) {
            add(
                    name.word() + " hinge to " + name.word() + " axle",
                    b.hingeXM() - b.onlyAxle().xM());
        } else {
            axles(name.word() + " hinge", b.hingeXM(), name.word(), own);
        }
        String last = name.word() + " axle" + (own.size() == 1 ? "" : " " + own.size());
        add(
                last + " to rear of " + name.told(),
                b.lastAxle().xM() - Math.min(b.underside().rearXM(), b.topside().rearXM()));
        b.nextHinge()
                .ifPresent(h -> add(last + " to the hinge behind", b.lastAxle().xM() - h.at().xM()));
        List<Axle> axles = t.axles().axles();
        b.closeCoupledAxleXM()
                .ifPresent(x -> add(
                        "trailer axle " + axles.size() + " to booster axle, close-coupled",
                        axles.get(axles.size() - 1).xM() - x));
    }

    private void heights(LevelStance stance) {
        Trailer t = stance.trailer();
        add("height of the fifth wheel", stance.tractor().fifthWheel().hM());
        add("height of the deck front", t.deckFront().hM());
        add("height of the deck rear", t.deckRear().hM());
        lowest("the tractor", stance.tractor().underside());
        lowest("the trailer", t.underside());
        for (int i = 0; i < stance.boosters().size(); i++) {
            lowest(UnitName.booster(i + 1).told(), stance.boosters().get(i).underside());
        }
        add("highest point of the tractor", stance.tractor().topside().highestM());
        add("highest point of the trailer", t.topside().highestM());
        t.load().stream().mapToDouble(Outline::highestM).max().ifPresent(h -> add("highest point of the load", h));
        boolean one = t.lift().axles().size() == 1;
        t.lift()
                .axles()
                .forEach(l -> add(
                        one
                                ? "raised tire over the ground"
                                : "raised tire of axle " + (l.index() + 1) + " over the ground",
                        l.gapM()));
    }

    private void lowest(String unit, Outline underside) {
        FramePoint low = underside.points().stream()
                .min(Comparator.comparingDouble(FramePoint::hM))
                .orElseThrow();
        add("lowest point of " + unit + (low.part().isEmpty() ? "" : ", " + low.part()), low.hM());
    }
}
