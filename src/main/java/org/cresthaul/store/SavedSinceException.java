package org.cresthaul.store;

/** Somebody has saved since the revision that a change was made from. */
public final class SavedSinceException extends Exception {
    private final transient Revision latest;

    SavedSinceException(Revision latest) {
        super("the latest is revision " + latest.number());
        this.latest = latest;
    }

    public Revision latest() {
        return latest;
    }
}
