package org.cresthaul.server;

import java.util.List;
import java.util.Map;
import org.cresthaul.units.InputProblem;

/** Ends the handling of a request with problem details. */
final class Refusal extends RuntimeException {
    private final ProblemKind kind;
    private final transient List<InputProblem> problems;
    private final transient Map<String, String> headers;

    Refusal(ProblemKind kind, String detail, List<InputProblem> problems, Map<String, String> headers) {
        super(detail, null, false, false);
        this.kind = kind;
        this.problems = List.copyOf(problems);
        this.headers = Map.copyOf(headers);
    }

    Refusal(ProblemKind kind, String detail) {
        this(kind, detail, List.of(), Map.of());
    }

    /** The refusal for a document with these mistakes, at least one. */
    static Refusal of(List<InputProblem> problems) {
        boolean unreadable = problems.stream().anyMatch(p -> p.code().equals("not-json"));
        String count =
                problems.size() == 1 ? "One place must be corrected." : problems.size() + " places must be corrected.";
        return unreadable
                ? new Refusal(ProblemKind.NOT_JSON, problems.get(0).message(), problems, Map.of())
                : new Refusal(ProblemKind.BAD_INPUT, count, problems, Map.of());
    }

    /** More memory would be needed than there is now. */
    static Refusal memoryShort() {
        return new Refusal(
                ProblemKind.BUSY,
                "There is not enough memory for this request beside the others. Try again"
                        + " later, send less, or start the program with more memory.",
                List.of(),
                Map.of("Retry-After", "10"));
    }

    ProblemKind kind() {
        return kind;
    }

    List<InputProblem> problems() {
        return problems;
    }

    Map<String, String> headers() {
        return headers;
    }

    ProblemDetails details() {
        return ProblemDetails.of(kind, getMessage(), problems);
    }
}
