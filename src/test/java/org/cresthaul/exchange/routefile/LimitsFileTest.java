package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.Route;
import org.cresthaul.route.Stretch;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Weight limits in files: taken as written, refused with every mistake, and seen by the schemas where they can. */
class LimitsFileTest {
    private static final double LB = 0.45359237;
    private static final Schema LIMITS = schema("limits-1");
    private static final Schema ROUTE = schema("route-1");

    private static Schema schema(String name) {
        try (InputStream text = LimitsFileTest.class.getResourceAsStream("/schema/" + name + ".schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    static Stream<Mistake> fileMistakes() {
        return LimitsTexts.FILE_MISTAKES.stream();
    }

    static Stream<Mistake> routeMistakes() {
        return LimitsTexts.ROUTE_MISTAKES.stream();
    }

    @Test
    void readsALimitsFileAsWritten() throws Exception {
        WeightLimits limits = LimitsFile.parse(LimitsTexts.LIMITS);

        assertEquals("trial permit", limits.name());
        assertEquals(LocalDate.of(2026, 11, 2), limits.date());
        assertEquals(140_000 * LB, limits.grossKg().orElseThrow(), 1e-9);
        assertEquals(46_000 * LB, limits.groupsKg().get(2), 1e-9);
        assertEquals(110_000 * LB, limits.grossByAxlesKg().get(6), 1e-9);
        assertTrue(limits.bridgeFormula());
        assertEquals(List.of(), LIMITS.validate(LimitsTexts.LIMITS, InputFormat.JSON));
    }

    @Test
    void readsBridgesAndStretchesOfARoute() throws Exception {
        Route route = RouteFile.parse(LimitsTexts.ROUTE);

        assertEquals(List.of(), ROUTE.validate(LimitsTexts.ROUTE, InputFormat.JSON));
        assertEquals("trial permit", route.limits().orElseThrow().name());
        PostedBridge bridge = (PostedBridge) route.findHazard("B01").orElseThrow();
        assertEquals("Mill race", bridge.limits().orElseThrow().name());
        assertEquals(bridge.fromChainageM(), bridge.toChainageM());
        Stretch stretch = (Stretch) route.findHazard("S01").orElseThrow();
        assertEquals(250, stretch.toChainageM() - stretch.fromChainageM(), 1e-9);
        assertTrue(stretch.replacesOthers() && stretch.isSurveyed());
    }

    @Test
    void aBridgeNobodyReadTheSignOfIsNotSurveyed() throws Exception {
        Route route = RouteFile.parse(JsonEdit.edit(LimitsTexts.ROUTE, "/features/0/properties/limits", "absent"));

        assertFalse(route.findHazard("B01").orElseThrow().isSurveyed());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("fileMistakes")
    void tellsMistakesInFiles(Mistake mistake) {
        String document = mistake.in(LimitsTexts.LIMITS);
        InputRejected rejected = assertThrows(InputRejected.class, () -> LimitsFile.parse(document));

        assertEquals(
                mistake.code(),
                rejected.problems().get(0).code(),
                rejected.problems().toString());
        assertEquals(mistake.at(), rejected.problems().get(0).pointer());
        assertEquals(
                mistake.shape(), !LIMITS.validate(document, InputFormat.JSON).isEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("routeMistakes")
    void tellsMistakesInRoutes(Mistake mistake) {
        String document = mistake.in(LimitsTexts.ROUTE);
        InputRejected rejected = assertThrows(InputRejected.class, () -> RouteFile.parse(document));

        assertEquals(
                mistake.code(),
                rejected.problems().get(0).code(),
                rejected.problems().toString());
        assertEquals(mistake.at(), rejected.problems().get(0).pointer());
        assertEquals(
                mistake.shape(), !ROUTE.validate(document, InputFormat.JSON).isEmpty());
    }
}
