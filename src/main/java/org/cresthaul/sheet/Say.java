package org.cresthaul.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.units.Duration;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.Speed;
import org.cresthaul.units.UnitSystem;

/**
 * Puts a line together from a text of the catalog and figures, so that no figure gets onto a paper without its origin.
 * A figure goes where {@link #at} says, or after what was said before.
 */
final class Say {
    private final UnitSystem units;
    private final Catalog catalog;
    private final RoundedFigures rounded;
    private final StringBuilder text = new StringBuilder();
    private final List<SheetLine.Figure> figures = new ArrayList<>();
    /** The text that waits for its figures, or null. */
    private Code code;

    private final Map<String, Part> parts = new HashMap<>();
    private String place;

    /** What stands at a place of a text, and the figures in it. */
    private record Part(String shown, List<SheetLine.Figure> figures) {}

    Say(UnitSystem units, Catalog catalog) {
        this.units = units;
        this.catalog = catalog;
        rounded = new RoundedFigures(units);
    }

    /** A text of the catalog, after what was said before. */
    Say and(Code next) {
        finish();
        code = next;
        return this;
    }

    private void finish() {
        if (code != null) {
            text.append(catalog.filled(code, at -> {
                Part part = parts.get(at);
                if (part == null) {
                    throw new IllegalArgumentException(code + " wants " + at);
                }
                figures.addAll(part.figures);
                return part.shown;
            }));
            parts.clear();
            code = null;
        }
    }

    Say words(String words) {
        finish();
        text.append(words);
        return this;
    }

    /** Where in the text the next figure stands. */
    Say at(String where) {
        place = where;
        return this;
    }

    /** A name as it stands in a file. */
    Say with(String where, String name) {
        parts.put(where, new Part(name, List.of()));
        return this;
    }

    Say with(String where, Sentence sentence) {
        return with(where, sentence.in(catalog));
    }

    Say with(String where, Say said) {
        said.finish();
        parts.put(where, new Part(said.text.toString(), said.figures));
        return this;
    }

    private Say figure(String english, double value, String from) {
        return shown(catalog.figure(english), value, from);
    }

    private Say shown(String shown, double value, String from) {
        SheetLine.Figure figure = new SheetLine.Figure(shown, value, from);
        if (place == null) {
            finish();
            text.append(shown);
            figures.add(figure);
        } else {
            parts.put(place, new Part(shown, List.of(figure)));
            place = null;
        }
        return this;
    }

    Say gap(double meters, String from) {
        return figure(rounded.clearance(meters), meters, from);
    }

    /**
     * A gap and what it must reach, no finer than a tape reads, at "gap" and "need" of a text. Where they are less than
     * a step apart and the need is met, another text says that; rounded apart they would read as if it were not.
     */
    Say gapAgainst(Code against, Code just, double gapM, String gapFrom, double needM, String needFrom) {
        if (gapM >= needM && rounded.readsShort(gapM, needM)) {
            return and(just).at("gap").gap(gapM, gapFrom);
        }
        return and(against).at("gap").gap(gapM, gapFrom).at("need").required(needM, needFrom);
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
        String size = catalog.figure(rounded.raiseSize(meters, endM));
        return shown(
                rounded.isAsFarAsItGoes(meters, endM) ? catalog.filled(Code.FIGURE_AS_FAR, at -> size) : size,
                meters,
                from);
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
        String size = catalog.figure(rounded.alongRoadSize(meters));
        return shown(
                size.isEmpty()
                        ? catalog.text(Code.FIGURE_AT_POINT)
                        : catalog.filled(meters < 0 ? Code.FIGURE_BEFORE_POINT : Code.FIGURE_PAST_POINT, at -> size),
                meters,
                from);
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
        finish();
        return new SheetLine(text.toString(), false, null, figures);
    }

    SheetLine toDo() {
        finish();
        return new SheetLine(text.toString(), true, null, figures);
    }
}
