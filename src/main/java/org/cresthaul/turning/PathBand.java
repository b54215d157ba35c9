package org.cresthaul.turning;

import java.util.Arrays;
import org.cresthaul.turning.TurningFigures.Swing;

/** Least and greatest offset from a lead path, by station: what some places of a combination pass through. */
final class PathBand {
    /** Width of a cross-section's bin, meters. */
    private static final double BIN_M = 0.25;

    /** Two neighboring states that lie farther apart than this along the path have crossed its middle of curvature. */
    private static final double JUMP_M = 4;

    private final Track track;
    private final AxlePaths axles;
    private final double firstM;
    private final double[] least;
    private final double[] most;

    PathBand(Track track, AxlePaths axles) {
        this.track = track;
        this.axles = axles;
        double beside = 2;
        for (TurningUnit unit : track.chain()) {
            beside += unit.hitchToAxleM() + Math.abs(unit.couplingBehindM());
        }
        beside *= 2;
        firstM = track.stationM(0) - beside;
        int bins = (int) ((track.stationM(track.size() - 1) - track.stationM(0) + 2 * beside) / BIN_M) + 2;
        least = new double[bins];
        most = new double[bins];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        Arrays.fill(most, Double.NEGATIVE_INFINITY);
    }

    void addPath(int unit, double aheadM, double leftM) {
        PathFrame frame = new PathFrame(track, unit, aheadM);
        double lastStation = Double.NaN;
        double lastOffset = 0;
        for (int i = 0; i < track.size(); i++) {
            frame.project(i, axles.xM(unit, i, aheadM, leftM), axles.yM(unit, i, aheadM, leftM));
            double station = frame.stationM();
            double offset = frame.offsetM();
            add(station, offset);
            if (Math.abs(station - lastStation) < JUMP_M) {
                int parts = (int) (Math.abs(station - lastStation) / BIN_M);
                for (int j = 1; j <= parts; j++) {
                    double t = j / (parts + 1.0);
                    add(lastStation + t * (station - lastStation), lastOffset + t * (offset - lastOffset));
                }
            }
            lastStation = station;
            lastOffset = offset;
        }
    }

    private void add(double station, double offset) {
        int bin = (int) Math.floor((station - firstM) / BIN_M);
        if (bin >= 0 && bin < least.length) {
            least[bin] = Math.min(least[bin], offset);
            most[bin] = Math.max(most[bin], offset);
        }
    }

    double widest() {
        double widest = 0;
        for (int b = 0; b < least.length; b++) {
            widest = Math.max(widest, most[b] - least[b]);
        }
        return widest;
    }

    /** How far a place's path leaves this band on one side: 1 for the left, -1 for the right. */
    Swing beyond(int unit, double aheadM, double leftM, int side) {
        PathFrame frame = new PathFrame(track, unit, aheadM);
        Swing worst = Swing.none();
        for (int i = 0; i < track.size(); i++) {
            double x = axles.xM(unit, i, aheadM, leftM);
            double y = axles.yM(unit, i, aheadM, leftM);
            frame.project(i, x, y);
            double place = (frame.stationM() - firstM) / BIN_M - 0.5;
            int bin = (int) Math.floor(place);
            if (bin < 0
                    || bin + 1 >= least.length
                    || !(least[bin] <= most[bin])
                    || !(least[bin + 1] <= most[bin + 1])) {
                continue;
            }
            double t = place - bin;
            double out = side < 0
                    ? (1 - t) * least[bin] + t * least[bin + 1] - frame.offsetM()
                    : frame.offsetM() - (1 - t) * most[bin] - t * most[bin + 1];
            if (out > worst.valueM()) {
                worst = new Swing(out, unit, x, y, track.stationM(i), side);
            }
        }
        return worst;
    }
}
