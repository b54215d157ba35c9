package org.cresthaul.check;

import java.util.OptionalDouble;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;

/**
 * At what speed an answer for a combination that rolls slowly still stands. Gaps are those of quasi-static posture;
 * driven faster, body and load bounce. The allowance for that is 1 in at 10 mph and grows with the square of speed, as
 * the upward push of a bump does: this program's choice, measured by nobody. It may use up what is left beyond margin
 * and uncertainty, and no more.
 */
public final class BounceAllowance {
    /** No faster is ever told, m/s: 55 mph. */
    static final double MOST_MPS = 24.5872;
    /** Slower than this is a crawl, m/s: 5 mph. */
    static final double CRAWL_MPS = 2.2352;

    private static final double INCH_M = 0.0254;
    private static final double TEN_MPH_MPS = 4.4704;

    private BounceAllowance() {}

    /** What a bounce may take at a speed, meters. */
    public static double meters(double mps) {
        return INCH_M * (mps / TEN_MPH_MPS) * (mps / TEN_MPH_MPS);
    }

    /** The most for which so much beyond what is required is enough, m/s; empty where it is a crawl. */
    public static OptionalDouble speedMps(double leftM) {
        double mps = leftM <= 0 ? 0 : Math.min(MOST_MPS, TEN_MPH_MPS * Math.sqrt(leftM / INCH_M));
        return mps < CRAWL_MPS ? OptionalDouble.empty() : OptionalDouble.of(mps);
    }

    /**
     * Over the ground and under a structure, whichever are judged; empty where it is a crawl, also because nothing is
     * known to be left.
     */
    public static OptionalDouble speedMps(ReportCell cell) {
        double leftM = Math.min(leftM(cell.ground()), leftM(cell.overhead()));
        return leftM == Double.POSITIVE_INFINITY ? OptionalDouble.empty() : speedMps(leftM);
    }

    /** The cell with the speed for which its answer stands. */
    static ReportCell told(ReportCell cell) {
        OptionalDouble most = cell.verdict() == Verdict.CLEAR ? speedMps(cell) : OptionalDouble.empty();
        return cell.withSpeed(most.isPresent() ? (Double) most.getAsDouble() : null);
    }

    /** Of a gap that is clear, told or deciding elsewhere. */
    private static double leftM(GapFinding gap) {
        return gap == null ? Double.POSITIVE_INFINITY : Math.min(gap.valueM() - gap.requiredM(), leftM(gap.deciding()));
    }
}
