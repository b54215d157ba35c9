package org.cresthaul.exchange.raster;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/** Why nothing can be made of a raster. */
final class Refusals {
    private Refusals() {}

    static InputRejected of(String code, String message, String remedy) {
        return new InputRejected(List.of(new InputProblem(code, message, "", remedy)));
    }

    static InputRejected damaged() {
        return of("damaged-raster", "The raster is damaged or cut short.", "Fetch or export it again.");
    }

    /** @throws InputRejected with everything that nobody says of a raster */
    static void requireSaid(boolean coordinates, boolean unit) throws InputRejected {
        List<InputProblem> problems = new ArrayList<>();
        if (!coordinates) {
            problems.add(new InputProblem(
                    "raster-without-crs",
                    "The raster does not say in which coordinates it lies.",
                    "",
                    "Name them by their EPSG code (--raster-crs, or Coordinates of rasters on the page), or export it"
                            + " with them."));
        }
        if (!unit) {
            problems.add(new InputProblem(
                    "raster-without-unit",
                    "The raster does not say in which unit its heights are, and a foot is no meter.",
                    "",
                    "Say m, ft or ftUS (--raster-unit, or Heights of rasters on the page)."));
        }
        if (!problems.isEmpty()) {
            throw new InputRejected(problems);
        }
    }

    static InputRejected tooLarge(String what) {
        return of(
                "raster-too-large",
                "The raster " + what + ".",
                "Cut it to the surroundings of the route, or write it in tiles.");
    }
}
