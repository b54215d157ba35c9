package org.cresthaul.geometry;

/** Ends work that nobody wants any more; only who gave the {@link StopSignal} catches it. */
public final class WorkStopped extends RuntimeException {
    private static final long serialVersionUID = 1;

    public WorkStopped() {
        super("stopped: nobody waits for the answer", null, false, false);
    }
}
