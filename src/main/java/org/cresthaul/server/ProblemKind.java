package org.cresthaul.server;

/** Every kind of refusal of the server: its status, its stable type and its title (RFC 9457 section 3.1). */
enum ProblemKind {
    BAD_REQUEST(400, "bad-request", "The request could not be understood"),
    NOT_JSON(400, "not-json", "The request is not valid JSON"),
    OTHER_SITE(403, "other-site", "The page of another site may not ask this"),
    NOT_FOUND(404, "not-found", "There is nothing at this address"),
    METHOD_NOT_ALLOWED(405, "method-not-allowed", "This address does not take that method"),
    SAVED_SINCE(412, "saved-since", "Somebody has saved since"),
    TOO_LARGE(413, "too-large", "The request is too large"),
    MEDIA_TYPE(415, "media-type", "The request is not declared as what is taken here"),
    WRONG_HOST(421, "wrong-host", "This server does not answer to that host name"),
    BAD_INPUT(422, "bad-input", "The input has mistakes"),
    PRECONDITION_REQUIRED(428, "if-match-missing", "The request must say which revision it was made from"),
    HEADERS_TOO_LARGE(431, "headers-too-large", "The request's headers are too large"),
    INTERNAL(500, "internal", "The program made a mistake"),
    TOO_SLOW(408, "too-slow", "The request came too slowly"),
    BUSY(503, "busy", "The server is busy with other checks"),
    OVER_TIME(503, "over-time", "The check took more than one request may"),
    NOT_WRITABLE(503, "not-writable", "It cannot be saved now"),
    DISK_FULL(507, "disk-full", "There is no room to save it");

    private final int status;
    private final String word;
    private final String title;

    ProblemKind(int status, String word, String title) {
        this.status = status;
        this.word = word;
        this.title = title;
    }

    int status() {
        return status;
    }

    String title() {
        return title;
    }

    /** A URI that names the kind; it is not an address. */
    String type() {
        return "urn:cresthaul:problem:" + word;
    }

    /** The kind for a status that some layer below chose. */
    static ProblemKind ofStatus(int status) {
        for (ProblemKind kind : values()) {
            if (kind.status == status) {
                return kind;
            }
        }
        return status < 500 ? BAD_REQUEST : INTERNAL;
    }
}
