package org.cresthaul.clearance;

import org.cresthaul.clearance.bound.FrameOutline;
import org.cresthaul.clearance.bound.Need;
import org.cresthaul.clearance.bound.OutlineGaps;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;

/**
 * A {@link Demand} spelled out for one unit: the gap needed at each of its points, growing with how far wheels and
 * point stand beyond the survey on ground of uncertain grade. Set to one step of the search at a time.
 */
final class UnitNeed implements Need {
    private final Passage passage;
    private final RoadProfile line;
    private final Demand demand;
    private final Leverage leverage;
    private final UnitName unit;
    private final FrameOutline frame;
    private final double[][] vertexWeights;
    private final double[] vertexDemand;
    private final double[][] segmentWeights;
    private final double[] segmentDemand;
    private final double[] tireWeights;
    private final double tireDemand;
    private double[] strayM = new double[0];
    private boolean onSurvey;

    UnitNeed(Demand demand, Passage passage, Leverage leverage, UnitName unit, OutlineGaps gaps) {
        this.demand = demand;
        this.passage = passage;
        line = passage.line();
        this.leverage = leverage;
        this.unit = unit;
        frame = gaps.frame;
        int n = gaps.frame.vertex.length;
        vertexWeights = new double[n][];
        vertexDemand = new double[n];
        for (int i = 0; i < n; i++) {
            vertexWeights[i] = leverage.weights(unit, gaps.frame.vertex[i].xM());
            vertexDemand[i] = wantedM(gaps.frame.vertex[i].xM());
        }
        int m = gaps.frame.rx.length;
        segmentWeights = new double[m][];
        segmentDemand = new double[m];
        for (int k = 0; k < m; k++) {
            // Weights are convex along a segment, so its ends bound them.
            double[] rear = leverage.weights(unit, gaps.frame.rx[k]);
            double[] front = leverage.weights(unit, gaps.frame.fx[k]);
            segmentWeights[k] = new double[rear.length];
            for (int j = 0; j < rear.length; j++) {
                segmentWeights[k][j] = Math.max(rear[j], front[j]);
            }
            segmentDemand[k] = Math.max(wantedM(gaps.frame.rx[k]), wantedM(gaps.frame.fx[k]));
        }
        tireWeights = gaps.hasTire() ? leverage.weights(unit, gaps.tireFoot().xM()) : null;
        tireDemand = gaps.hasTire() ? wantedM(gaps.tireFoot().xM()) : 0;
    }

    private double wantedM(double xM) {
        return passage.wantedM(demand, leverage, unit, xM);
    }

    /** How far each support's ground may stray from the extended line over the coming step, meters. */
    void setStray(double[] bySupportM) {
        strayM = bySupportM;
        onSurvey = true;
        for (double stray : bySupportM) {
            onSurvey &= stray == 0;
        }
    }

    @Override
    public double atVertex(int i, double xA, double xB) {
        return vertexDemand[i] + weighed(vertexWeights[i]) + beyondSurvey(xA, xB);
    }

    @Override
    public double atTire(double xA, double xB) {
        return tireDemand + weighed(tireWeights) + beyondSurvey(xA, xB);
    }

    @Override
    public double alongSegment(int k) {
        return segmentDemand[k] + weighed(segmentWeights[k]);
    }

    @Override
    public double onSegment(int k, double t) {
        double xM = frame.rx[k] + t * (frame.fx[k] - frame.rx[k]);
        return wantedM(xM) + (onSurvey ? 0 : weighed(leverage.weights(unit, xM)));
    }

    private double weighed(double[] weights) {
        if (onSurvey) {
            return 0;
        }
        double sum = 0;
        for (int j = 0; j < weights.length; j++) {
            sum += weights[j] * strayM[j];
        }
        return sum;
    }

    @Override
    public double beyondSurvey(double xA, double xB) {
        return Stray.between(line, demand, xA, xB);
    }
}
