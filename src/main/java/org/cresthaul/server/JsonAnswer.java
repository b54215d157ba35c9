package org.cresthaul.server;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Sentence;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.Worded;

/**
 * Records as JSON: keys in the order of their components, figures rounded by their rules and written in the shortest
 * form that reads back the same, UTF-8. The same value gives the same bytes under every locale and on every run.
 */
public final class JsonAnswer {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            // The components alone are keys: what else a record can be asked is none.
            .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
            .addModule(new SimpleModule()
                    .addSerializer(double.class, new FiniteNumber())
                    .addSerializer(Double.class, new FiniteNumber())
                    .addSerializer(Worded.class, new Word())
                    .addSerializer(Sentence.class, new Said()))
            .build();

    private JsonAnswer() {}

    /** @throws IllegalArgumentException when the value holds a number that is not finite, or is not made of records */
    public static byte[] bytes(Object value) {
        return bytes(value, Catalog.ENGLISH);
    }

    /** With its sentences in a language; keys and closed sets of words are the same in all. */
    public static byte[] bytes(Object value, Catalog catalog) {
        try {
            return MAPPER.writer().withAttribute(Catalog.class, catalog).writeValueAsBytes(RoundedRecords.of(value));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("cannot be written as JSON: " + e.getOriginalMessage(), e);
        }
    }

    private static final class Word extends JsonSerializer<Worded> {
        @Override
        public void serialize(Worded value, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeString(value.word());
        }
    }

    private static final class Said extends JsonSerializer<Sentence> {
        @Override
        public void serialize(Sentence value, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeString(value.in((Catalog) provider.getAttribute(Catalog.class)));
        }
    }

    /** JSON has no NaN and no infinity: a number that is not known must leave the program as null, by name. */
    private static final class FiniteNumber extends JsonSerializer<Double> {
        @Override
        public void serialize(Double value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("not a finite number: " + value);
            }
            json.writeNumber(value == 0 ? 0.0 : value);
        }
    }
}
