package org.cresthaul.check;

/**
 * A rule that is not kept, apart from by how much: two states can be compared by what they break.
 *
 * @param how it is not kept
 * @param axles which it adds up, in words
 * @param source whose rule it is
 */
public record BrokenRule(How how, String rule, String axles, String source) {
    /** Less than any scale shows. */
    private static final double NOTHING_KG = 0.05;

    /** How a rule is not kept. */
    public enum How {
        OVER("over"),
        /** Less than must stand on it. */
        TOO_LIGHT("too light"),
        /** Nothing stands on it, or it is lifted. */
        CARRIED("carried");

        private final String word;

        How(String word) {
            this.word = word;
        }
    }

    static BrokenRule of(LoadSheet.Finding f) {
        boolean carried = f.loadKg() < NOTHING_KG && f.limitKg() == 0;
        How how = !f.least() ? How.OVER : carried ? How.CARRIED : How.TOO_LIGHT;
        return new BrokenRule(how, f.rule(), f.axles(), f.source());
    }

    /** "over: gross weight, all axles (the permit)" */
    public String words() {
        return how.word + ": " + named();
    }

    /** "gross weight, all axles (the permit)" */
    public String named() {
        return rule + ", " + axles + " (" + source + ")";
    }
}
