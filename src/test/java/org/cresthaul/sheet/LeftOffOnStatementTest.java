package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/**
 * Which vehicles a statement names where a unit is left off. The words expected are the sample file's own, which has
 * one text for both boosters.
 */
class LeftOffOnStatementTest {
    private static final String JEEP = "VIN 00-INVENTED-JEEP-2, plate none";
    private static final String BOOSTERS = "VIN 00-INVENTED-BOOSTER-2 and 00-INVENTED-BOOSTER-3, plates none";

    /** Label to value of the rows on vehicles, by the name of the combination. */
    private static Map<String, Map<String, String>> vehicles() throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-with-two-boosters.rig.json")));
        Route route = RouteFile.parse(RoadCase.road(RoadCase.crest("1 mm", s -> 0)));
        return rig.combinations().stream()
                .collect(Collectors.toMap(LevelStance::name, stance -> vehicles(route, rig, stance)));
    }

    private static Map<String, String> vehicles(Route route, Rig rig, LevelStance stance) {
        Haul haul = new Haul(route, rig, stance, Margins.defaults());
        Report report = RouteCheck.check(haul, new Inputs("0", "0"));
        return Statement.of(
                        CompletePlan.of(haul, report, PlanOptions.defaults()),
                        report,
                        route,
                        rig,
                        stance,
                        UnitSystem.US_CUSTOMARY)
                .identity()
                .stream()
                .filter(r -> r.label().startsWith("Jeep,") || r.label().startsWith("Booster,"))
                .collect(Collectors.toMap(
                        r -> r.label().replaceFirst(",.*", ""), r -> r.value().text()));
    }

    @Test
    void saysWhichOfThemAreNotThere() throws Exception {
        String without = BOOSTERS + "; of these, booster 2 is left off";
        assertEquals(
                Map.of(
                        "loaded", Map.of("Jeep", JEEP, "Booster", BOOSTERS),
                        "loaded, without booster 2", Map.of("Jeep", JEEP, "Booster", without),
                        "loaded, without jeep", Map.of("Booster", BOOSTERS),
                        "loaded, without jeep and booster 2", Map.of("Booster", without)),
                vehicles());
    }
}
