package org.cresthaul.units;

/**
 * One mistake in what a person handed in.
 *
 * @param code short stable word for the kind of mistake ("unit-missing", "axle-order")
 * @param message what is wrong, one sentence, naming the field
 * @param pointer where: an RFC 6901 JSON pointer into the document, empty for the whole of it
 * @param remedy what to do about it, one sentence
 */
public record InputProblem(String code, String message, String pointer, String remedy) {
    public InputProblem {
        if (code.isBlank() || message.isBlank() || remedy.isBlank()) {
            throw new IllegalArgumentException(
                    "a problem needs a code, a message and a remedy: " + code + ", " + message);
        }
        if (!pointer.isEmpty() && pointer.charAt(0) != '/') {
            throw new IllegalArgumentException("not a JSON pointer: " + pointer);
        }
    }

    @Override
    public String toString() {
        return (pointer.isEmpty() ? "" : pointer + ": ") + message + " " + remedy + " [" + code + "]";
    }
}
