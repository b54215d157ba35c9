package org.cresthaul.store;

import java.util.List;

/**
 * What is to become a revision.
 *
 * @param name of the project
 * @param author who saves it; empty when nobody said
 * @param reason what was changed or why
 * @param view what was asked and shown, as an address fragment of the page; empty for nothing
 * @param files in an order of their own
 */
public record Draft(String name, String author, String reason, String view, List<GivenFile> files) {
    public Draft {
        files = List.copyOf(files);
    }
}
