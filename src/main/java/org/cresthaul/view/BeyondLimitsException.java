package org.cresthaul.view;

/** A raise that the rig does not reach. */
public final class BeyondLimitsException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;
    private final String field;

    public BeyondLimitsException(String message, String field) {
        super(message);
        this.field = field;
    }

    /** Which field of the question asked for it. */
    public String field() {
        return field;
    }
}
