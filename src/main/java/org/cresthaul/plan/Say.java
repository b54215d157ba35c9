package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;

/** Puts a line together from words and figures, so that no figure gets onto a paper without its origin. */
final class Say {
    private final UnitSystem units;
    private final RoundedFigures rounded;
    private final StringBuilder text = new StringBuilder();
    private final List<SheetLine.Figure> figures = new ArrayList<>();

    Say(UnitSystem units) {
        this.units = units;
        rounded = new RoundedFigures(units);
    }

    Say words(String words) {
        text.append(words);
        return this;
    }

    private Say figure(String shown, double value, String from) {
        text.append(shown);
        figures.add(new SheetLine.Figure(shown, value, from));
        return this;
    }

    Say gap(double meters, String from) {
        return figure(rounded.clearance(meters), meters, from);
    }

    /**
     * A gap and what it must reach, with the words between them: no finer than a tape reads. Where they are less than a
     * step apart and the need is met, that is said; rounded apart they would read as if it were not.
     */
    Say gapAgainst(double gapM, String gapFrom, double needM, String needFrom, String between) {
        if (gapM >= needM && rounded.readsShort(gapM, needM)) {
            return gap(gapM, gapFrom).words(", just what is needed");
        }
        return gap(gapM, gapFrom).words(between).required(needM, needFrom);
    }

    Say required(double meters, String from) {
        return figure(rounded.required(meters), meters, from);
    }

    /** A dimension that decides nothing, to the nearest step. */
    Say dimension(double meters, String from) {
        return figure(rounded.dimension(meters), meters, from);
    }

    /** How far to raise, never farther than it goes. */
    Say raise(double meters, Double endM, String from) {
        return figure(rounded.raise(meters, endM), meters, from);
    }

    /** A length along the road, rounded up. */
    Say distance(double meters, String from) {
        return figure(rounded.distance(meters), meters, from);
    }

    /** How far axles are apart, rounded down. */
    Say spacing(double meters, String from) {
        return figure(rounded.spacing(meters), meters, from);
    }

    Say alongRoad(double meters, String from) {
        return figure(rounded.alongRoad(meters), meters, from);
    }

    Say chainage(double meters, String from) {
        return figure(rounded.chainage(meters), meters, from);
    }

    /** How far to back, in round figures, rounded down. */
    Say way(double meters, String from) {
        return figure(rounded.way(meters), meters, from);
    }

    Say angle(double radians, String from) {
        return figure(rounded.angle(radians), radians, from);
    }

    Say weight(double kilograms, String from) {
        return figure(rounded.weight(kilograms), kilograms, from);
    }

    Say weightLeft(double kilograms, String from) {
        return figure(rounded.weightLeft(kilograms), kilograms, from);
    }

    /** The least that may be set, rounded up. */
    Say pressureUp(double pascals, String from) {
        return figure(rounded.pressureUp(pascals), pascals, from);
    }

    /** The most that may be set, rounded down. */
    Say pressureDown(double pascals, String from) {
        return figure(rounded.pressureDown(pascals), pascals, from);
    }

    Say pressure(double pascals, String from) {
        return figure(rounded.pressure(pascals), pascals, from);
    }

    Say speed(double metersPerSecond, String from) {
        return figure(new Speed(metersPerSecond).format(units), metersPerSecond, from);
    }

    /** A speed that must not be exceeded, in round figures. */
    Say speedDown(double metersPerSecond, String from) {
        return figure(rounded.speedDown(metersPerSecond), metersPerSecond, from);
    }

    Say minutes(long seconds, String from) {
        return figure(Duration.inMinutes(seconds), seconds, from);
    }

    /** Seconds as they are, for what is short. */
    Say seconds(double seconds, String from) {
        return figure(
                RoundedFigures.fixed(seconds, seconds == Math.rint(seconds) ? 0 : 1, java.math.RoundingMode.UP) + " s",
                seconds,
                from);
    }

    /** Seconds that are left over, rounded down. */
    Say secondsLeft(double seconds, String from) {
        return figure(RoundedFigures.fixed(seconds, 1, java.math.RoundingMode.FLOOR) + " s", seconds, from);
    }

    Say count(long count, String from) {
        return figure(Long.toString(count), count, from);
    }

    /** A share of something, rounded down to the tenth of a percent. */
    Say share(double share, String from) {
        return figure(RoundedFigures.percentDown(share), share, from);
    }

    SheetLine plain() {
        return new SheetLine(text.toString(), false, null, figures);
    }

    SheetLine toDo() {
        return new SheetLine(text.toString(), true, null, figures);
    }
}
