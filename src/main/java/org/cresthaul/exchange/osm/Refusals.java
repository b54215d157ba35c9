package org.cresthaul.exchange.osm;

import java.util.List;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/** An extract refused as a whole, for one reason. */
final class Refusals {
    private Refusals() {}

    static InputRejected of(String code, String message, String remedy) {
        return new InputRejected(List.of(new InputProblem(code, message, "", remedy)));
    }

    static InputRejected damaged() {
        return of(
                "damaged-extract",
                "The map extract is damaged or cut short.",
                "Download or export it again, and compare its checksum.");
    }
}
