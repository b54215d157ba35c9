package org.cresthaul.server;

import java.util.List;
import org.cresthaul.units.InputProblem;

/**
 * The body of every answer that is not a result (RFC 9457).
 *
 * @param type names the kind of problem
 * @param title the kind in words
 * @param status as in the status line
 * @param detail what it was this time
 * @param problems places to mend; empty when no place can be named
 */
record ProblemDetails(String type, String title, int status, String detail, List<PlaceToCorrect> problems) {
    static final String MEDIA_TYPE = "application/problem+json";

    ProblemDetails {
        problems = List.copyOf(problems);
    }

    /**
     * One place to mend.
     *
     * @param pointer RFC 6901 pointer into the request's body, empty for the whole of it
     * @param code short stable word
     * @param message what is wrong
     * @param remedy what to do about it
     */
    record PlaceToCorrect(String pointer, String code, String message, String remedy) {
        static PlaceToCorrect of(InputProblem problem) {
            return new PlaceToCorrect(problem.pointer(), problem.code(), problem.message(), problem.remedy());
        }
    }

    static ProblemDetails of(ProblemKind kind, String detail, List<InputProblem> problems) {
        return new ProblemDetails(
                kind.type(),
                kind.title(),
                kind.status(),
                detail,
                problems.stream().map(PlaceToCorrect::of).toList());
    }
}
