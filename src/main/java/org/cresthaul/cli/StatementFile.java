package org.cresthaul.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.Margins;
import org.cresthaul.sheet.Statement;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;
import org.cresthaul.units.UnitSystem;

/**
 * A statement as it was written in JSON, and the question it answers.
 *
 * @param limitsSha256 of the limits file, or null where none was used
 */
record StatementFile(
        JsonNode tree,
        String routeSha256,
        String rigSha256,
        String limitsSha256,
        String stance,
        UnitSystem units,
        Margins margins,
        PlanOptions options) {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            // Kinds of conditions are written by their words.
            .enable(DeserializationFeature.READ_ENUMS_USING_TO_STRING)
            .build();

    /** @throws InputRejected when it is no statement, or its question cannot be read */
    static StatementFile parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        JsonNode tree = JsonText.read(document, problems);
        problems.throwIfAny();
        if (!Statement.FORM.equals(tree.path("cresthaul").asText())) {
            throw rejected(
                    "no-statement",
                    "This is no statement: its \"cresthaul\" is not \"" + Statement.FORM + "\".",
                    "/cresthaul",
                    "Name a file written by statement --form json.");
        }
        try {
            return new StatementFile(
                    tree,
                    text(tree, "/route/sha256"),
                    text(tree, "/rig/sha256"),
                    tree.at("/route/limitsSha256").isTextual() ? text(tree, "/route/limitsSha256") : null,
                    text(tree, "/rig/stance"),
                    text(tree, "/units").equals("metric") ? UnitSystem.METRIC : UnitSystem.US_CUSTOMARY,
                    value(tree, "/margins", Margins.class),
                    value(tree, "/options", PlanOptions.class));
        } catch (JsonProcessingException | IllegalArgumentException e) {
            throw rejected(
                    "wrong-statement",
                    "What was asked cannot be read from this statement.",
                    "/options",
                    "Name the file as statement --form json wrote it; it was changed since, or made by another version.");
        }
    }

    private static String text(JsonNode tree, String pointer) throws InputRejected {
        if (!tree.at(pointer).isTextual()) {
            throw rejected(
                    "missing",
                    "The statement does not tell " + pointer + ".",
                    pointer,
                    "Name the file as statement --form json wrote it.");
        }
        return tree.at(pointer).textValue();
    }

    private static <T> T value(JsonNode tree, String pointer, Class<T> type)
            throws JsonProcessingException, InputRejected {
        if (!tree.at(pointer).isObject()) {
            throw rejected(
                    "missing",
                    "The statement does not tell " + pointer + ".",
                    pointer,
                    "Name the file as statement --form json wrote it.");
        }
        return MAPPER.treeToValue(tree.at(pointer), type);
    }

    private static InputRejected rejected(String code, String message, String pointer, String remedy) {
        return new InputRejected(List.of(new InputProblem(code, message, pointer, remedy)));
    }
}
