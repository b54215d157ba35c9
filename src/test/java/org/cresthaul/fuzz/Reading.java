package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;

/** What holds of whatever a reader takes. */
final class Reading {
    private Reading() {}

    static Schema schema(String name) {
        try (InputStream text = Reading.class.getResourceAsStream("/schema/" + name + ".schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(text.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The published schema refuses nothing that the reader takes. */
    static void requireSound(Schema schema, String document) {
        assertEquals(List.of(), schema.validate(document, InputFormat.JSON), document);
    }

    /** Every clear has its gap and its margin, and nothing told is without a number. */
    static void requireSense(Route route, Rig rig, LevelStance stance) {
        Report report = RouteCheck.check(new Haul(route, rig, stance, Margins.defaults()), new Inputs("", ""));
        for (HazardFindings hazard : report.hazards()) {
            for (ReportCell cell : hazard.cells()) {
                require(hazard.id() + " " + cell.configuration(), cell);
            }
        }
    }

    private static void require(String what, ReportCell cell) {
        boolean clear = cell.verdict() == Verdict.CLEAR;
        assertTrue(!clear || cell.reasons().isEmpty(), () -> what + " is clear, and yet " + cell.reasons());
        for (GapFinding gap : new GapFinding[] {cell.ground(), cell.overhead()}) {
            if (gap != null) {
                assertTrue(Double.isFinite(gap.valueM()), () -> what + " " + gap);
                assertTrue(!clear || gap.valueM() >= Margins.defaults().groundM() - 0.001, () -> what + " " + gap);
            }
        }
    }
}
