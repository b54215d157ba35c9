package org.cresthaul.check;

import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.LoadFinding;

/**
 * A rule that is not kept, apart from by how much: two states can be compared by what they break.
 *
 * @param how it is not kept
 * @param axles which it adds up, in words
 * @param source whose rule it is
 */
public record BrokenRule(How how, Sentence rule, Sentence axles, Sentence source) {
    /** Less than any scale shows. */
    private static final double NOTHING_KG = 0.05;

    /** How a rule is not kept. */
    public enum How {
        OVER(Code.RULE_OVER),
        /** Less than must stand on it. */
        TOO_LIGHT(Code.RULE_TOO_LIGHT),
        /** Nothing stands on it, or it is lifted. */
        CARRIED(Code.RULE_CARRIED);

        private final Code code;

        How(Code code) {
            this.code = code;
        }
    }

    static BrokenRule of(LoadFinding f) {
        boolean carried = f.loadKg() < NOTHING_KG && f.limitKg() == 0;
        How how = !f.least() ? How.OVER : carried ? How.CARRIED : How.TOO_LIGHT;
        return new BrokenRule(how, f.rule(), f.axles(), f.source());
    }

    /** "over: gross weight, all axles (the permit)" */
    public Sentence words() {
        return Sentence.of(how.code).with("rule", named());
    }

    /** "gross weight, all axles (the permit)" */
    public Sentence named() {
        return Sentence.of(Code.RULE_AXLES_SOURCE)
                .with("rule", rule)
                .with("axles", axles)
                .with("source", source);
    }
}
