package org.cresthaul.exchange.track;

import java.util.List;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/** A file refused as a whole, for one reason. */
final class Refusals {
    private Refusals() {}

    static InputRejected of(String code, String message, String remedy) {
        return new InputRejected(List.of(new InputProblem(code, message, "", remedy)));
    }
}
