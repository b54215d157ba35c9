package org.cresthaul.plan;

import org.cresthaul.check.CheckedConfiguration;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;

/** How a plan names places and set-ups, in words. */
public final class NamesOfPlan {
    private NamesOfPlan() {}

    /** "H02 Sorrel main line", or the limits of the whole route by id and name. */
    public static Sentence place(String id, String name) {
        return Sentence.of(Code.PLACE_NAMED).with("id", id).with("name", name);
    }

    /** "3 axles · no booster · notch 4" */
    public static Sentence setUp(Plan.SetUp set) {
        return CheckedConfiguration.label(set.axles(), set.lift(), set.booster(), set.notch());
    }
}
