package org.cresthaul.store;

import java.util.Arrays;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Files and the pieces they are made of. */
final class FileShelf {
    /** Where a file is. */
    record ShelvedFile(long id, long bytes) {}

    ShelvedFile put(Handle handle, GivenFile file) {
        byte[] hash = Sha256.parse(file.sha256());
        Optional<ShelvedFile> there = place(handle, hash);
        if (there.isPresent()) {
            return there.get();
        }
        byte[] content = file.content().orElseThrow(() -> new UnknownFileException(file.sha256()));
        long id = handle.createUpdate("INSERT INTO file (sha256, bytes) VALUES (?, ?)")
                .bind(0, hash)
                .bind(1, content.length)
                .executeAndReturnGeneratedKeys()
                .mapTo(Long.class)
                .one();
        int from = 0;
        int number = 0;
        for (int to : FilePieces.ends(content)) {
            handle.execute(
                    "INSERT INTO file_piece (file, place, piece) VALUES (?, ?, ?)",
                    id,
                    number++,
                    piece(handle, content, from, to));
            from = to;
        }
        return new ShelvedFile(id, content.length);
    }

    private static Optional<ShelvedFile> place(Handle handle, byte[] hash) {
        return handle.createQuery("SELECT id, bytes FROM file WHERE sha256 = ?")
                .bind(0, hash)
                .map((row, context) -> new ShelvedFile(row.getLong("id"), row.getLong("bytes")))
                .findOne();
    }

    private static long piece(Handle handle, byte[] content, int from, int to) {
        byte[] hash = Sha256.of(content, from, to);
        return handle.createQuery("SELECT id FROM piece WHERE sha256 = ?")
                .bind(0, hash)
                .mapTo(Long.class)
                .findOne()
                .orElseGet(() -> handle.createUpdate("INSERT INTO piece (sha256, content) VALUES (?, ?)")
                        .bind(0, hash)
                        .bind(1, Arrays.copyOfRange(content, from, to))
                        .executeAndReturnGeneratedKeys()
                        .mapTo(Long.class)
                        .one());
    }

    /** The file put together; never another than the one that was given. */
    Optional<byte[]> find(Handle handle, String sha256) {
        Optional<ShelvedFile> place = place(handle, Sha256.parse(sha256));
        if (place.isEmpty()) {
            return Optional.empty();
        }
        byte[] content = new byte[(int) place.get().bytes()];
        int[] filled = {0};
        handle.createQuery("SELECT content FROM file_piece JOIN piece ON piece.id = piece"
                        + " WHERE file = ? ORDER BY place")
                .bind(0, place.get().id())
                .mapTo(byte[].class)
                .forEach(piece -> {
                    if (filled[0] + piece.length <= content.length) {
                        System.arraycopy(piece, 0, content, filled[0], piece.length);
                    }
                    filled[0] += piece.length;
                });
        if (!Sha256.hex(Sha256.of(content, 0, content.length)).equals(sha256)) {
            throw new StoreFailure(StoreFailure.Kind.UNREADABLE, "a file is no longer what was given", null);
        }
        return Optional.of(content);
    }
}
