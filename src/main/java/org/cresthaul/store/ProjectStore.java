package org.cresthaul.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Projects, each a sequence of revisions that are only ever added. What a method has returned from is on the disk; what
 * it has thrown from is not there at all. Safe to share between threads, and between processes on one folder.
 *
 * <p>Every method throws {@link StoreFailure} when the disk or the file does not do its part.
 */
public interface ProjectStore extends AutoCloseable {
    /** The latest revision of every project that is not removed, the one saved last first. */
    List<Revision> listProjects();

    /** Every revision of a project, oldest first; none when there is no such project. */
    List<Revision> listRevisions(String project);

    Optional<Revision> findLatest(String project);

    Optional<Revision> findRevision(String project, int number);

    /** A file that was given with some revision, byte for byte, by its SHA-256 in lower-case hexadecimal. */
    Optional<byte[]> findFile(String sha256);

    /** Begins a project with its first revision. */
    Revision begin(Draft draft);

    /**
     * Adds a revision.
     *
     * @param on number of the revision that the draft was made from
     * @throws SavedSinceException when that is no longer the latest
     * @throws UnknownFileException when the draft names a file by its hash alone and it is not there
     */
    Revision save(String project, int on, Draft draft) throws SavedSinceException;

    /** Every project that is removed, the one removed last first. Each can be brought back, however long ago. */
    List<RemovedProject> listRemoved();

    /**
     * Removes a project; nothing of it is deleted, and it is there again as soon as another revision is saved on it.
     *
     * @param on number of the revision that was looked at
     * @throws SavedSinceException when that is no longer the latest
     * @throws IllegalArgumentException when there is no such project
     */
    RemovedProject remove(String project, int on, String author) throws SavedSinceException;

    /**
     * A removed project is there again, with one more revision that is as its last one.
     *
     * @return empty when there is none that is removed
     */
    Optional<Revision> bringBack(String project, String author);

    /**
     * Keeps a paper of a project as it was issued, with what it was asked for.
     *
     * @throws IllegalArgumentException when there is no such project
     */
    IssuedPaper keep(String project, PaperKind kind, String mediaType, String version, byte[] request, byte[] content);

    /** Every paper that was issued of a project, oldest first. */
    List<IssuedPaper> listPapers(String project);

    Optional<IssuedPaper> findPaper(String id);

    /** Writes all of it as one file that opens as a store, as it stands at one moment; others go on saving. */
    void backUp(Path file);

    @Override
    void close();
}
