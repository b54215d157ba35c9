package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/** The published description of the API, to hold answers against. */
public final class OpenApi {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    private OpenApi() {}

    static JsonNode document() {
        try (InputStream in = OpenApi.class.getResourceAsStream("/openapi.json")) {
            return JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Asserts that {@code value} is what the document's schema of that name describes. */
    public static void requireValid(String schemaName, JsonNode value) {
        assertTrue(document().at("/components/schemas/" + schemaName).isObject(), "no schema " + schemaName);
        requireValid(JSON.createObjectNode().put("$ref", "#/components/schemas/" + schemaName), value);
    }

    /** Asserts that {@code value} is what {@code schema}, a part of the document, describes. */
    static void requireValid(JsonNode schema, JsonNode value) {
        ObjectNode whole = (ObjectNode) inDefinitions(schema);
        whole.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        whole.set("$defs", inDefinitions(document().at("/components/schemas")));
        Schema compiled = SCHEMAS.getSchema(whole);
        List<Error> errors = compiled.validate(value);
        assertTrue(
                errors.isEmpty(),
                () -> errors.stream().limit(10).toList() + " in "
                        + value.toString()
                                .substring(0, Math.min(600, value.toString().length())));
    }

    /** References as a schema on its own has them. */
    private static JsonNode inDefinitions(JsonNode schema) {
        try {
            return JSON.readTree(schema.toString().replace("#/components/schemas/", "#/$defs/"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
