package org.cresthaul.server;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.report.Version;
import org.cresthaul.store.Draft;
import org.cresthaul.store.FileKind;
import org.cresthaul.store.IssuedPaper;
import org.cresthaul.store.PaperKind;
import org.cresthaul.store.ProjectStore;
import org.cresthaul.store.RemovedProject;
import org.cresthaul.store.Revision;
import org.cresthaul.store.SavedSinceException;
import org.cresthaul.store.UnknownFileException;
import org.cresthaul.units.InputProblem;

/** Projects over HTTP. Nothing is answered with success before it is on the disk. */
final class ProjectDesk {
    private static final String JSON = "application/json";
    private static final Pattern ETAG = Pattern.compile("\"(\\d{1,9})\"");

    private final Optional<ProjectStore> store;
    private final BodyGate bodies;

    ProjectDesk(Optional<ProjectStore> store, BodyGate bodies) {
        this.store = store;
        this.bodies = bodies;
    }

    /** The latest revision of each, saved last first. */
    private record Projects(List<Project> projects) {}

    private record Revisions(List<Project> revisions) {}

    /** @param saved when, as RFC 3339 has it, in UTC */
    private record Project(
            String id,
            int revision,
            String name,
            String author,
            String saved,
            String reason,
            String view,
            List<ProjectFile> files) {
        static Project of(Revision revision) {
            return new Project(
                    revision.project(),
                    revision.number(),
                    revision.name(),
                    revision.author(),
                    revision.saved().toString(),
                    revision.reason(),
                    revision.view(),
                    revision.files().stream()
                            .map(f -> new ProjectFile(f.kind(), f.name(), f.sha256(), f.bytes()))
                            .toList());
        }
    }

    private record ProjectFile(FileKind kind, String name, String sha256, long bytes) {}

    /** @param removed the one removed last first */
    private record RemovedProjects(List<Removed> removed) {}

    /**
     * @param removed as a project's saved
     * @param author empty when nobody said
     */
    private record Removed(Project project, String removed, String author) {
        static Removed of(RemovedProject removed) {
            return new Removed(Project.of(removed.latest()), removed.removed().toString(), removed.author());
        }
    }

    private record Papers(List<Paper> papers) {}

    /** @param issued as a project's saved */
    private record Paper(
            String id, int revision, PaperKind paper, String mediaType, String version, String issued, String sha256) {
        static Paper of(IssuedPaper paper) {
            return new Paper(
                    paper.id(),
                    paper.revision(),
                    paper.kind(),
                    paper.mediaType(),
                    paper.version(),
                    paper.issued().toString(),
                    paper.contentSha256());
        }
    }

    List<Endpoint> endpoints() {
        return List.of(
                new Endpoint(HandlerType.GET, "/api/projects", this::list),
                new Endpoint(HandlerType.POST, "/api/projects", this::begin),
                new Endpoint(HandlerType.GET, "/api/projects/{project}", this::latest),
                new Endpoint(HandlerType.PUT, "/api/projects/{project}", this::save),
                new Endpoint(HandlerType.DELETE, "/api/projects/{project}", this::remove),
                new Endpoint(HandlerType.GET, "/api/removed", this::removed),
                new Endpoint(HandlerType.POST, "/api/removed/{project}", this::bringBack),
                new Endpoint(HandlerType.GET, "/api/projects/{project}/revisions", this::revisions),
                new Endpoint(HandlerType.GET, "/api/projects/{project}/revisions/{number}", this::revision),
                new Endpoint(HandlerType.GET, "/api/projects/{project}/papers", this::papers),
                new Endpoint(HandlerType.GET, "/api/papers/{paper}", this::paper),
                new Endpoint(HandlerType.GET, "/api/papers/{paper}/record", this::record),
                new Endpoint(HandlerType.GET, "/api/files/{sha256}", this::file));
    }

    boolean keeps() {
        return store.isPresent();
    }

    private ProjectStore store() {
        return store.orElseThrow(() -> new Refusal(
                ProblemKind.NOT_FOUND, "This server keeps no projects; start it with --data and a folder."));
    }

    private void list(Context ctx) {
        answer(
                ctx,
                new Projects(store().listProjects().stream().map(Project::of).toList()));
    }

    private void revisions(Context ctx) {
        List<Revision> all = store().listRevisions(ctx.pathParam("project"));
        if (all.isEmpty()) {
            throw notThere("project");
        }
        answer(ctx, new Revisions(all.stream().map(Project::of).toList()));
    }

    private void latest(Context ctx) {
        answer(ctx, store().findLatest(ctx.pathParam("project")).orElseThrow(() -> notThere("project")));
    }

    private void revision(Context ctx) {
        String number = ctx.pathParam("number");
        Optional<Revision> found = number.matches("[1-9]\\d{0,8}")
                ? store().findRevision(ctx.pathParam("project"), Integer.parseInt(number))
                : Optional.empty();
        answer(ctx, found.orElseThrow(() -> notThere("revision")));
    }

    private void file(Context ctx) {
        byte[] content = store().findFile(ctx.pathParam("sha256")).orElseThrow(() -> notThere("file"));
        ctx.contentType(JSON).result(content);
    }

    /**
     * The project that a paper is issued for, when one is named.
     *
     * @throws Refusal when it is not there
     */
    Optional<String> projectOf(Context ctx) {
        Optional<String> project = Optional.ofNullable(ctx.queryParam("project"));
        if (project.isPresent() && store().findLatest(project.get()).isEmpty()) {
            throw notThere("project");
        }
        return project;
    }

    /** Keeps a paper and tells where it can be had. */
    String keep(String project, PaperKind kind, PaperRecord.Made made, byte[] request) {
        return "/api/papers/"
                + store().keep(project, kind, made.mediaType(), Version.NUMBER, request, made.bytes())
                        .id();
    }

    private void papers(Context ctx) {
        String project = ctx.pathParam("project");
        store().findLatest(project).orElseThrow(() -> notThere("project"));
        answer(
                ctx,
                new Papers(store().listPapers(project).stream().map(Paper::of).toList()));
    }

    private void paper(Context ctx) {
        IssuedPaper paper = store().findPaper(ctx.pathParam("paper")).orElseThrow(() -> notThere("paper"));
        ctx.contentType(paper.mediaType()).result(content(paper.contentSha256()));
    }

    private void record(Context ctx) {
        IssuedPaper paper = store().findPaper(ctx.pathParam("paper")).orElseThrow(() -> notThere("paper"));
        ctx.header(
                        "Content-Disposition",
                        "attachment; filename=\"" + paper.kind().word() + ".record.json\"")
                .contentType(JSON)
                .result(PaperRecord.write(paper, content(paper.requestSha256()), content(paper.contentSha256())));
    }

    private byte[] content(String sha256) {
        return store().findFile(sha256).orElseThrow(() -> new IllegalStateException("a paper without its file"));
    }

    private void begin(Context ctx) throws IOException {
        ProjectStore there = store();
        Draft draft = draft(ctx);
        try {
            Revision begun = there.begin(draft);
            ctx.status(201).header("Location", "/api/projects/" + begun.project());
            answer(ctx, begun);
        } catch (UnknownFileException unknown) {
            throw refusal(draft, unknown);
        }
    }

    private void save(Context ctx) throws IOException {
        ProjectStore there = store();
        int on = on(ctx);
        Draft draft = draft(ctx);
        String project = ctx.pathParam("project");
        if (there.findLatest(project).isEmpty()) {
            throw notThere("project");
        }
        try {
            answer(ctx, there.save(project, on, draft));
        } catch (SavedSinceException since) {
            throw savedSince(on, since.latest());
        } catch (UnknownFileException unknown) {
            throw refusal(draft, unknown);
        }
    }

    private void remove(Context ctx) {
        ProjectStore there = store();
        int on = on(ctx);
        String project = ctx.pathParam("project");
        if (there.findLatest(project).isEmpty()) {
            throw notThere("project");
        }
        try {
            answer(ctx, Removed.of(there.remove(project, on, author(ctx))));
        } catch (SavedSinceException since) {
            throw savedSince(on, since.latest());
        }
    }

    private void removed(Context ctx) {
        answer(
                ctx,
                new RemovedProjects(
                        store().listRemoved().stream().map(Removed::of).toList()));
    }

    private void bringBack(Context ctx) {
        answer(
                ctx,
                store().bringBack(ctx.pathParam("project"), author(ctx))
                        .orElseThrow(() -> new Refusal(
                                ProblemKind.NOT_FOUND, "There is no such removed project here; see /api/removed.")));
    }

    /** Who does it, where the query says so. */
    private static String author(Context ctx) {
        String author = Optional.ofNullable(ctx.queryParam("author")).orElse("");
        if (author.length() > JsonFields.LONGEST_NAME) {
            throw Refusal.of(List.of(new InputProblem(
                    "too-long",
                    "The author is longer than " + JsonFields.LONGEST_NAME + " characters.",
                    "/author",
                    "Write the name alone.")));
        }
        return author;
    }

    private Draft draft(Context ctx) throws IOException {
        try (BodyGate.Admitted room = bodies.admit()) {
            return ProjectRequest.read(RequestBody.json(ctx, room));
        } catch (OutOfMemoryError e) {
            throw Refusal.memoryShort();
        }
    }

    /** The revision that the change was made from. Any (*) would save over what nobody has looked at. */
    private static int on(Context ctx) {
        String asked = ctx.header("If-Match");
        if (asked == null || asked.equals("*")) {
            throw new Refusal(
                    ProblemKind.PRECONDITION_REQUIRED,
                    "Send the header If-Match with the ETag of the revision that this was made from.");
        }
        Matcher tag = ETAG.matcher(asked);
        return tag.matches() ? Integer.parseInt(tag.group(1)) : 0;
    }

    private static Refusal savedSince(int on, Revision latest) {
        String who = latest.author().isEmpty() ? "" : " by " + latest.author();
        String told = "This was made from revision " + on + "; the latest is revision " + latest.number() + ", saved"
                + who + " at " + latest.saved() + ": " + latest.reason() + ".";
        return new Refusal(
                ProblemKind.SAVED_SINCE,
                told,
                List.of(new InputProblem(
                        "saved-since",
                        told,
                        "",
                        "Look at revision " + latest.number() + ", then save on it, or save this as another project.")),
                Map.of("ETag", tag(latest)));
    }

    private static Refusal refusal(Draft draft, UnknownFileException unknown) {
        int place = 0;
        while (!draft.files().get(place).sha256().equals(unknown.sha256())) {
            place++;
        }
        return Refusal.of(List.of(new InputProblem(
                "unknown-file",
                "No file with this hash was saved here.",
                "/files/" + place + "/sha256",
                "Set the document itself in.")));
    }

    private static Refusal notThere(String what) {
        return new Refusal(ProblemKind.NOT_FOUND, "There is no such " + what + " here; see /api/projects.");
    }

    private static String tag(Revision revision) {
        return "\"" + revision.number() + "\"";
    }

    private static void answer(Context ctx, Revision revision) {
        ctx.header("ETag", tag(revision));
        answer(ctx, Project.of(revision));
    }

    private static void answer(Context ctx, Object value) {
        ctx.contentType(JSON).result(JsonAnswer.bytes(value));
    }
}
