package org.cresthaul.store;

import java.util.Optional;

/** A file that is to be part of a revision: its bytes, or only its hash when the store has it already. Immutable. */
public final class GivenFile {
    private final FileKind kind;
    private final String name;
    private final String sha256;
    private final byte[] content;

    private GivenFile(FileKind kind, String name, String sha256, byte[] content) {
        if (!Sha256.isHex(sha256)) {
            throw new IllegalArgumentException("not a SHA-256: " + sha256);
        }
        this.kind = kind;
        this.name = name;
        this.sha256 = sha256;
        this.content = content;
    }

    public static GivenFile of(FileKind kind, String name, byte[] content) {
        byte[] own = content.clone();
        return new GivenFile(kind, name, Sha256.hex(Sha256.of(own, 0, own.length)), own);
    }

    /** One that was given before. */
    public static GivenFile known(FileKind kind, String name, String sha256) {
        return new GivenFile(kind, name, sha256, null);
    }

    public FileKind kind() {
        return kind;
    }

    public String name() {
        return name;
    }

    public String sha256() {
        return sha256;
    }

    Optional<byte[]> content() {
        return Optional.ofNullable(content);
    }
}
