package org.cresthaul.report;

import org.cresthaul.language.Sentence;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * A rule and what it meets.
 *
 * @param source whose rule it is
 * @param axles which axles it adds up, in words
 * @param first index of the front one among the sheet's axles; null for the hitch
 * @param last index of the rear one; null for the hitch
 * @param limitKg most allowed, or least wanted when {@code least}
 * @param marginKg what is left, rounded down; negative when it is not kept
 */
public record LoadFinding(
        Sentence rule,
        Sentence source,
        Sentence axles,
        Integer first,
        Integer last,
        @Rounded(Rounding.MASS_NEAR) double loadKg,
        @Rounded(Rounding.MASS_NEAR) double limitKg,
        @Rounded(Rounding.MASS_DOWN) double marginKg,
        boolean least,
        Verdict verdict)
        implements Finding {
    @Override
    public double left() {
        return marginKg;
    }

    @Override
    public double share() {
        return Finding.shareOfLoad(marginKg, limitKg);
    }
}
