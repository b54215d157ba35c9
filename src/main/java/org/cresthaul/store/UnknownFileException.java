package org.cresthaul.store;

/** A draft names a file by a hash that the store does not know. */
public final class UnknownFileException extends RuntimeException {
    private final String sha256;

    UnknownFileException(String sha256) {
        super("no file " + sha256);
        this.sha256 = sha256;
    }

    public String sha256() {
        return sha256;
    }
}
