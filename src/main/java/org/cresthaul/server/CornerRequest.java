package org.cresthaul.server;

import java.util.List;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.units.InputProblem;
import org.cresthaul.view.CornerView;
import org.cresthaul.view.NotSurveyedException;

/** Which corner is asked for, beside the check it belongs to. */
record CornerRequest(String hazard, String configuration) {
    static CornerRequest read(JsonFields fields) {
        return new CornerRequest(
                fields.text("hazard", JsonFields.LONGEST_NAME), fields.text("configuration", JsonFields.LONGEST_NAME));
    }

    /** @throws Refusal when the route or the rig has no such thing */
    CornerView of(CheckRequest check) {
        try {
            return CornerView.of(check.haul(), hazard, configuration);
        } catch (UnknownNameException unknown) {
            throw refusal(unknown.field(), "unknown-name", unknown.getMessage() + ".", "See the report for the names.");
        } catch (NotSurveyedException none) {
            throw refusal(
                    "hazard",
                    "not-surveyed",
                    none.getMessage() + ".",
                    "Give the corner's geometry in the route file and the rig's plan in the rig file.");
        }
    }

    private static Refusal refusal(String field, String code, String message, String remedy) {
        return Refusal.of(List.of(new InputProblem(code, message, "/" + field, remedy)));
    }
}
