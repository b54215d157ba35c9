package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.cresthaul.clearance.Passage;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/**
 * A rig found by a search for the dearest: its bend cannot be decided, and its outlines overlap. What was looked at
 * between the units counts all the same.
 */
class UndecidedBendTest {
    private static final String LOAD = "/stances/0/trailer/load/0/outline";
    /** Every so many points of the load are left. */
    private static final int EVERY = 8;

    private static String text(String name) throws Exception {
        try (InputStream in = UndecidedBendTest.class.getResourceAsStream("undecided-bend." + name + ".json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Work taken by the first setting with a booster close-coupled. */
    private static long taken(String rigText) throws Exception {
        Rig rig = RigFile.parse(rigText);
        Hazard hazard = RouteFile.parse(text("route")).hazards().get(0);
        HazardCheck check = new HazardCheck(hazard, rig, rig.stances().get(0), Margins.defaults());
        CheckedConfiguration asked = CheckedConfiguration.listOf(
                        rig, rig.stances().get(0))
                .stream()
                .filter(c -> c.key().startsWith("down/close-coupled/"))
                .findFirst()
                .orElseThrow();
        WorkLimit limit = Passage.limit(check.surroundings().points());
        check.judge(asked.transport(), limit);
        return limit.taken();
    }

    /** Pairs go with the points of the load, 368 or an eighth of them; what else is looked at hardly does. */
    @Test
    void paysForWhatWasLookedAtBetweenUnits() throws Exception {
        JsonNode load = new ObjectMapper().readTree(text("rig")).at(LOAD);
        assertEquals(368, load.size());
        StringBuilder fewer = new StringBuilder("[");
        for (int i = 0;
                i < load.size();
                i += i + EVERY < load.size() || i == load.size() - 1 ? EVERY : load.size() - 1 - i) {
            fewer.append(fewer.length() == 1 ? "" : ",").append(load.get(i));
        }
        long all = taken(text("rig"));
        long some = taken(JsonEdit.edit(text("rig"), LOAD, fewer.append("]").toString()));
        assertTrue(all > some + 200, all + " and " + some);
    }
}
