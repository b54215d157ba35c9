package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.report.Version;
import org.cresthaul.store.IssuedPaper;
import org.cresthaul.store.PaperKind;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * The record of an issued paper: what it was asked for with every file it was made from, byte for byte, which version
 * made it, and its hash. It is enough to make the paper again.
 */
public final class PaperRecord {
    /** What its "cresthaul" says. */
    public static final String FORM = "record/1";

    private static final String JSON = "application/json";

    private final PaperKind kind;
    private final String version;
    private final String issued;
    private final String sha256;
    private final byte[] request;
    private final Optional<byte[]> document;

    private PaperRecord(PaperKind kind, JsonFields fields, byte[] request, Optional<byte[]> document) {
        this.kind = kind;
        this.version = fields.text("version", JsonFields.LONGEST_NAME);
        this.issued = fields.text("issued", JsonFields.LONGEST_NAME);
        this.sha256 = fields.text("sha256", JsonFields.LONGEST_NAME);
        this.request = request;
        this.document = document;
    }

    /** What the head of a record says. */
    private record Head(
            String cresthaul, PaperKind paper, String mediaType, String version, String issued, String sha256) {}

    /**
     * A paper made again from its record.
     *
     * @param paper which one
     * @param then the paper as it was issued, where the record holds it: as JSON
     * @param now what was made now, likewise
     */
    public record Again(
            PaperKind paper,
            String version,
            String issued,
            boolean identical,
            Optional<byte[]> then,
            Optional<byte[]> now) {}

    static byte[] write(IssuedPaper paper, byte[] request, byte[] content) {
        byte[] head = JsonAnswer.bytes(new Head(
                FORM,
                paper.kind(),
                paper.mediaType(),
                paper.version(),
                paper.issued().toString(),
                paper.contentSha256()));
        ByteArrayOutputStream record = new ByteArrayOutputStream(request.length + 1000);
        record.write(head, 0, head.length - 1);
        record.writeBytes(",\"request\":".getBytes(StandardCharsets.UTF_8));
        record.writeBytes(request);
        if (paper.mediaType().equals(JSON)) {
            record.writeBytes(",\"document\":".getBytes(StandardCharsets.UTF_8));
            record.writeBytes(content);
        }
        record.write('}');
        return record.toByteArray();
    }

    /** @throws InputRejected when it is no record */
    public static PaperRecord parse(byte[] record) throws InputRejected {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(record, problems);
        problems.throwIfAny();
        JsonFields fields = JsonFields.of(root, "", problems);
        if (!isRecord(root)) {
            throw new InputRejected(List.of(new InputProblem(
                    "no-record",
                    "This is no record of a paper: its \"cresthaul\" is not \"" + FORM + "\".",
                    "/cresthaul",
                    "Name a record that a project keeps, or a statement with its files.")));
        }
        String paper = fields.word(
                "paper", Arrays.stream(PaperKind.values()).map(PaperKind::word).toList());
        fields.object("request");
        fields.text("version", JsonFields.LONGEST_NAME);
        fields.text("issued", JsonFields.LONGEST_NAME);
        fields.text("sha256", JsonFields.LONGEST_NAME);
        problems.throwIfAny();
        return new PaperRecord(
                PaperKind.of(paper),
                fields,
                RequestMembers.bytes(record, "request").orElseThrow(),
                RequestMembers.bytes(record, "document"));
    }

    public static boolean isRecord(JsonNode root) {
        return FORM.equals(root.path("cresthaul").asText());
    }

    /** @throws InputRejected when what was asked is no longer taken */
    public Again again() throws InputRejected {
        byte[] made;
        try {
            made = make(kind, request, new CheckedReports()).bytes();
        } catch (Refusal refused) {
            List<InputProblem> problems = refused.problems();
            throw new InputRejected(
                    problems.isEmpty()
                            ? List.of(
                                    new InputProblem("refused", refused.getMessage(), "/request", "See what it says."))
                            : problems);
        }
        return new Again(
                kind,
                version,
                issued,
                RequestMembers.sha256(made, 0, made.length).equals(sha256),
                document,
                document.map(then -> made));
    }

    /** The version that makes it again. */
    public static String now() {
        return Version.NUMBER;
    }

    /** A paper and its media type. */
    record Made(String mediaType, byte[] bytes) {}

    /** Makes a paper. @throws Refusal when it cannot be made */
    static Made make(PaperKind kind, byte[] request, CheckedReports reports) {
        CheckRequest.With<PaperRequest> asked = CheckRequest.read(
                request,
                switch (kind) {
                    case RUN_SHEET -> PaperRequest::readSheet;
                    case STATEMENT -> PaperRequest::readStatement;
                },
                reports.documents());
        CheckRequest check = asked.check().requireBoundedWork();
        PaperRequest paper = asked.more();
        return new Made(
                paper.form().contentType,
                switch (kind) {
                    case RUN_SHEET -> paper.runSheet(check, reports);
                    case STATEMENT -> paper.statement(check, reports);
                });
    }
}
