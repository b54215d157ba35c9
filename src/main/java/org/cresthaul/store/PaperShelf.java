package org.cresthaul.store;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/** Issued papers in the database. */
final class PaperShelf {
    private final FileShelf files;

    PaperShelf(FileShelf files) {
        this.files = files;
    }

    /** What is issued, by which version, when. */
    record Issue(PaperKind kind, String mediaType, String version, Instant issued) {}

    IssuedPaper put(Handle handle, Revision on, Issue issue, byte[] request, byte[] content) {
        String id = UUID.randomUUID().toString();
        // No kind of a project's files: they hang on nothing but their bytes.
        GivenFile asked = GivenFile.of(FileKind.ROUTE, "request", request);
        GivenFile made = GivenFile.of(FileKind.ROUTE, "paper", content);
        handle.execute(
                "INSERT INTO paper (id, project, number, kind, media_type, version, issued, request, content)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                id,
                on.project(),
                on.number(),
                issue.kind().word(),
                issue.mediaType(),
                issue.version(),
                issue.issued().toString(),
                files.put(handle, asked).id(),
                files.put(handle, made).id());
        return new IssuedPaper(
                id,
                on.project(),
                on.number(),
                issue.kind(),
                issue.mediaType(),
                issue.version(),
                issue.issued(),
                asked.sha256(),
                made.sha256());
    }

    /** @param where on "paper" as p, with its bound values */
    static List<IssuedPaper> list(Handle handle, String where, Object... bound) {
        return handle.select(
                        "SELECT p.*, r.sha256 AS asked, c.sha256 AS made FROM paper p JOIN file r ON r.id = p.request"
                                + " JOIN file c ON c.id = p.content WHERE " + where + " ORDER BY p.issued, p.id",
                        bound)
                .map((row, context) -> new IssuedPaper(
                        row.getString("id"),
                        row.getString("project"),
                        row.getInt("number"),
                        PaperKind.of(row.getString("kind")),
                        row.getString("media_type"),
                        row.getString("version"),
                        Instant.parse(row.getString("issued")),
                        Sha256.hex(row.getBytes("asked")),
                        Sha256.hex(row.getBytes("made"))))
                .list();
    }
}
