package org.cresthaul;

import org.cresthaul.cli.Cresthaul;

/** Starts the program. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        System.exit(Cresthaul.run(arguments, System.out, System.err));
    }
}
