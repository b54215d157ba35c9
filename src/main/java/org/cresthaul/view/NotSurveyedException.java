package org.cresthaul.view;

/** A passage was asked for over a hazard that nobody surveyed. */
public final class NotSurveyedException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    public NotSurveyedException(String message) {
        super(message);
    }
}
