package org.cresthaul.cli;

/** Ends a command with exit code 2; the message, ready to print, says what to mend. */
final class Refused extends Exception {
    private static final long serialVersionUID = 1;

    Refused(String message) {
        super(message);
    }
}
