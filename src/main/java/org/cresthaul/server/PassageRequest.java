package org.cresthaul.server;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.Leveling;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.view.BeyondLimitsException;
import org.cresthaul.view.NotSurveyedException;
import org.cresthaul.view.PassageView;

/** Which passage is asked for, beside the check it belongs to. */
record PassageRequest(
        String hazard,
        String configuration,
        Optional<String> line,
        Optional<String> leveling,
        double frontRaiseM,
        double rearRaiseM) {
    private static final LengthLimits RAISE = new LengthLimits(0, 1);

    static PassageRequest read(JsonFields fields) {
        return new PassageRequest(
                fields.text("hazard", JsonFields.LONGEST_NAME),
                fields.text("configuration", JsonFields.LONGEST_NAME),
                fields.findText("line", JsonFields.LONGEST_NAME),
                fields.has("leveling")
                        ? Optional.of(fields.word("leveling", List.of(Leveling.HELD.word(), Leveling.SETTLED.word())))
                        : Optional.empty(),
                fields.findLengthM("frontRaise", RAISE).orElse(0),
                fields.findLengthM("rearRaise", RAISE).orElse(0));
    }

    /** @throws Refusal when the route or the rig has no such thing */
    PassageView of(CheckRequest check) {
        try {
            return PassageView.of(check.haul(), hazard, configuration, line, leveling, frontRaiseM, rearRaiseM);
        } catch (UnknownNameException unknown) {
            throw refusal(unknown.field(), "unknown-name", unknown.getMessage() + ".", "See the report for the names.");
        } catch (BeyondLimitsException beyond) {
            throw refusal(beyond.field(), "out-of-range", beyond.getMessage() + ".", "Stay within the rig's limits.");
        } catch (NotSurveyedException none) {
            throw refusal("hazard", "not-surveyed", none.getMessage() + ".", "Have it surveyed, then add its profile.");
        }
    }

    private static Refusal refusal(String field, String code, String message, String remedy) {
        return Refusal.of(List.of(new InputProblem(code, message, "/" + field, remedy)));
    }
}
