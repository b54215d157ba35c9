package org.cresthaul.check;

/** A hazard, configuration, line or leveling that the route or rig does not have. */
public final class UnknownNameException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;
    private final String field;

    public UnknownNameException(String message, String field) {
        super(message);
        this.field = field;
    }

    /** Which field of the question named it. */
    public String field() {
        return field;
    }
}
