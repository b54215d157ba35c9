package org.cresthaul.store;

import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;

/** The store could not do what was asked; nothing of it was done. */
public final class StoreFailure extends RuntimeException {
    /** What is in the way. */
    public enum Kind {
        /** There is no room on the disk. */
        FULL,
        /** The folder or its file cannot be written, or not be reached. */
        NOT_WRITABLE,
        /** Another process holds it for longer than is waited. */
        BUSY,
        /** What is there is no store, is damaged, or was written by a newer version. */
        UNREADABLE
    }

    private final Kind kind;

    StoreFailure(Kind kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }

    static StoreFailure of(Throwable failed) {
        for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
            if (cause instanceof StoreFailure known) {
                return known;
            }
            if (cause instanceof SQLException sql) {
                return new StoreFailure(
                        kindOf(sql.getErrorCode()), "the database answers: " + sql.getMessage(), failed);
            }
        }
        return new StoreFailure(Kind.UNREADABLE, "the database failed: " + failed.getMessage(), failed);
    }

    /** The primary code is the low byte of an extended one (sqlite.org, Result and Error Codes). */
    private static Kind kindOf(int code) {
        return switch (SQLiteErrorCode.getErrorCode(code & 0xFF)) {
            case SQLITE_FULL -> Kind.FULL;
            case SQLITE_BUSY, SQLITE_LOCKED -> Kind.BUSY;
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_IOERR, SQLITE_PERM, SQLITE_AUTH -> Kind.NOT_WRITABLE;
            default -> Kind.UNREADABLE;
        };
    }
}
