package org.cresthaul.turning;
import org.junit.jupiter.api.Test;
class CornerProbe {
    @Test void probe() {
        for (int rep = 0; rep < 4; rep++)
        for (double deg : new double[] {90, -90, -60, 120, -120})
            for (double r : new double[] {10, 20, 30}) {
                for (TurningCombination c : java.util.List.of(CornerCases.lowbed(13.5, 2.4), CornerCases.lowbed(12.5, 0))) {
                    var corner = CornerCases.junction(deg, 4, 4, r, true);
                    for (boolean e : new boolean[] {false, true}) {
                        long t = System.nanoTime();
                        CornerFit f = CornerFit.of(corner, c, e, 0.35);
                        double ms = (System.nanoTime() - t) / 1e6;
                        if (rep == 3) System.out.printf("%4.0f r%2.0f u%d esc=%b clear %.3f %s %s ms %.0f line R%.1f in%.1f out%.1f a%.2f s%.1f b%.2f lim=%b borrow=%b%n", deg, r, c.chain().size(), e, f.tightest().valueM(), f.tightest().part()+f.tightest().unit(), f.tightest().against(), ms, f.line().radiusM(), Math.toDegrees(f.line().swingInRad()), Math.toDegrees(f.line().swingOutRad()), f.line().offsetInM(), f.line().startM(), f.offsetOutM(), f.withinLimits(), f.usesOpposing());
                    }
                }
            }
        for (double deg : new double[] {-90, 0, 90, -90, 0, 90}) {
            long t = System.nanoTime();
            CornerFit f = CornerFit.of(CornerCases.roundabout(deg, 25, 12, 3), CornerCases.lowbed(12.5, 2.4), false, 0.35);
            System.out.println(deg + " round " + f.tightest() + " " + f.line() + " ms " + (System.nanoTime() - t) / 1e6);
        }
    }
}
