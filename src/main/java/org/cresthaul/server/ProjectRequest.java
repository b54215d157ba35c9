package org.cresthaul.server;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.store.Draft;
import org.cresthaul.store.FileKind;
import org.cresthaul.store.GivenFile;
import org.cresthaul.units.Problems;

/**
 * What is to be saved of a project, read from a request's body. A file's document is every byte between the colon after
 * its key and the comma or brace behind its value, so that it is kept with the bytes and the hash of the file.
 */
final class ProjectRequest {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final int MOST_FILES = 20;
    private static final String DOCUMENT = "document";

    private ProjectRequest() {}

    /** @throws Refusal with every mistake */
    static Draft read(byte[] body) {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(body, problems);
        refuseIfAny(problems);
        JsonFields fields = JsonFields.of(root, "", problems);
        String name = fields.text("name", JsonFields.LONGEST_NAME);
        String author = fields.findText("author", JsonFields.LONGEST_NAME).orElse("");
        String reason = fields.text("reason", JsonFields.LONGEST_NOTE);
        String view = fields.findText("view", JsonText.LONGEST_TEXT).orElse("");
        List<JsonFields> files = fields.objects("files", 0, MOST_FILES);
        fields.refuseOthers();
        Map<Integer, byte[]> documents = problems.isEmpty() ? documents(body) : Map.of();
        List<GivenFile> given = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            file(files.get(i), Optional.ofNullable(documents.get(i))).ifPresent(given::add);
        }
        refuseIfAny(problems);
        return new Draft(name, author, reason, view, given);
    }

    private static Optional<GivenFile> file(JsonFields file, Optional<byte[]> document) {
        String word = file.word("kind", FileKind.words());
        String name = file.text("name", JsonFields.LONGEST_NAME);
        Optional<String> sha256 = file.findText("sha256", 64);
        JsonNode content = file.find(DOCUMENT);
        file.refuseOthers();
        if (content.isMissingNode() == sha256.isEmpty()) {
            file.problem(
                    DOCUMENT,
                    "missing",
                    "A file has either its \"document\" or the \"sha256\" of one that was saved before.",
                    "Set the file in here.");
            return Optional.empty();
        }
        if (word.isEmpty() || name.isEmpty()) {
            return Optional.empty();
        }
        FileKind kind = FileKind.of(word);
        if (sha256.isPresent()) {
            if (!sha256.get().matches("[0-9a-f]{64}")) {
                file.problem("sha256", "wrong-text", "sha256 is no SHA-256.", "Write it in lower-case hexadecimal.");
                return Optional.empty();
            }
            return Optional.of(GivenFile.known(kind, name, sha256.get()));
        }
        if (!content.path("cresthaul").asText().startsWith(word + "/")) {
            file.problem(
                    DOCUMENT,
                    "other-kind",
                    "The document's \"cresthaul\" does not say that it is a " + word + " file.",
                    "See that kind and document belong together.");
            return Optional.empty();
        }
        return document.map(bytes -> GivenFile.of(kind, name, bytes));
    }

    private static void refuseIfAny(Problems problems) {
        if (!problems.isEmpty()) {
            throw Refusal.of(problems.list());
        }
    }

    /** The documents of the files by their place in the list. */
    private static Map<Integer, byte[]> documents(byte[] body) {
        Map<Integer, byte[]> documents = new TreeMap<>();
        try (JsonParser parser = FACTORY.createParser(body)) {
            parser.nextToken();
            for (String key = parser.nextFieldName(); key != null; key = parser.nextFieldName()) {
                JsonToken value = parser.nextToken();
                if (key.equals("files") && value == JsonToken.START_ARRAY) {
                    for (int place = 0; parser.nextToken() == JsonToken.START_OBJECT; place++) {
                        documentOf(parser, body, documents, place);
                    }
                } else {
                    parser.skipChildren();
                }
            }
        } catch (IOException e) {
            throw new IllegalArgumentException("not sound JSON in UTF-8", e);
        }
        return documents;
    }

    private static void documentOf(JsonParser parser, byte[] body, Map<Integer, byte[]> documents, int place)
            throws IOException {
        for (String key = parser.nextFieldName(); key != null; key = parser.nextFieldName()) {
            JsonToken value = parser.nextToken();
            int from = (int) parser.currentTokenLocation().getByteOffset();
            parser.skipChildren();
            if (key.equals(DOCUMENT) && value == JsonToken.START_OBJECT) {
                int to = (int) parser.currentLocation().getByteOffset();
                documents.put(
                        place,
                        Arrays.copyOfRange(
                                body, RequestMembers.widenedLeft(body, from), RequestMembers.widenedRight(body, to)));
            }
        }
    }
}
