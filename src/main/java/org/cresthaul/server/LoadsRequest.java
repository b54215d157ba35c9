package org.cresthaul.server;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.check.UnknownNameException;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.view.LoadAnswer;
import org.cresthaul.view.LoadQuestion;
import org.cresthaul.view.LoadsView;

/** Which loads are asked for, beside the check they belong to. */
record LoadsRequest(LoadQuestion question) {
    private static final LengthLimits ON_DECK = new LengthLimits(0, 60);

    static LoadsRequest read(JsonFields fields) {
        String configuration = fields.text("configuration", JsonFields.LONGEST_NAME);
        Optional<String> hazard = fields.findText("hazard", JsonFields.LONGEST_NAME);
        Optional<String> piece = fields.findText("piece", JsonFields.LONGEST_NAME);
        OptionalDouble at = fields.findLengthM("pieceAt", ON_DECK);
        OptionalDouble regulator = fields.findPressurePa("regulator");
        Map<AxleKind, Double> readings = new EnumMap<>(AxleKind.class);
        fields.findObject("readings").ifPresent(r -> {
            for (AxleKind gauge : List.of(AxleKind.TRAILER, AxleKind.BOOSTER)) {
                r.findPressurePa(gauge.word()).ifPresent(pa -> readings.put(gauge, pa));
            }
            r.refuseOthers();
        });
        return new LoadsRequest(new LoadQuestion(configuration, hazard, piece, at, regulator, readings));
    }

    /** @throws Refusal when the route or the rig has no such thing */
    LoadsView of(CheckRequest check) {
        try {
            return LoadAnswer.of(
                    check.haul().route(), check.haul().rig(), check.haul().stance(), question);
        } catch (UnknownNameException unknown) {
            boolean place = unknown.field().equals("pieceAt");
            throw Refusal.of(List.of(new InputProblem(
                    place ? "out-of-range" : "unknown-name",
                    unknown.getMessage() + ".",
                    "/" + unknown.field(),
                    place ? "Keep the piece on what it lies on." : "See the report for the names.")));
        }
    }
}
