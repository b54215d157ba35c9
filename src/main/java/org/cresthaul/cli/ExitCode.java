package org.cresthaul.cli;

/** What the program tells the shell. */
final class ExitCode {
    /** Done; in transport at least one configuration is clear at every hazard. Also for help and version. */
    static final int CLEAR = 0;
    /** Done; no configuration is clear at every hazard in transport. */
    static final int NOT_CLEAR = 1;
    /**
     * Nothing was checked: the command line or an input file has mistakes, or a file or port could not be had, or the
     * output not be written.
     */
    static final int REFUSED = 2;
    /** Nothing was checked: the program itself made a mistake. */
    static final int FAILED = 3;

    private ExitCode() {}
}
