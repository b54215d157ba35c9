package org.cresthaul.store;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a file into pieces at the features of the GeoJSON collections in it, so that two versions of a route share all
 * but the features that differ. The pieces put together are the file, whatever it holds; only how well they are shared
 * hangs on its being what it says.
 */
final class FilePieces {
    private static final byte[] KEY = {'f', 'e', 'a', 't', 'u', 'r', 'e', 's'};

    private final byte[] file;
    private final List<Integer> cuts = new ArrayList<>();

    private FilePieces(byte[] file) {
        this.file = file;
    }

    /** Where pieces end, ascending; the last is the file's length. An empty file has one empty piece. */
    static List<Integer> ends(byte[] file) {
        FilePieces pieces = new FilePieces(file);
        pieces.scan();
        return pieces.cuts;
    }

    private void scan() {
        int depth = 0;
        int featuresDepth = -1;
        boolean afterKey = false;
        for (int at = 0; at < file.length; at++) {
            byte b = file[at];
            if (b == '"') {
                int end = stringEnd(at);
                afterKey = isKey(at + 1, end - 1);
                at = end - 1;
            } else if (b == '{' || b == '[') {
                if (depth == featuresDepth) {
                    cut(at);
                }
                depth++;
                if (b == '[' && afterKey && featuresDepth < 0) {
                    featuresDepth = depth;
                }
                afterKey = false;
            } else if (b == '}' || b == ']') {
                if (depth == featuresDepth) {
                    cut(at);
                    featuresDepth = -1;
                }
                depth--;
                afterKey = false;
            } else if (b != ':' && b > ' ') {
                afterKey = false;
            }
        }
        cut(file.length);
        if (cuts.isEmpty()) {
            cuts.add(0);
        }
    }

    private void cut(int at) {
        if (at > 0 && (cuts.isEmpty() || cuts.get(cuts.size() - 1) != at)) {
            cuts.add(at);
        }
    }

    /** Past the closing quote, or the end of the file. */
    private int stringEnd(int quote) {
        int at = quote + 1;
        while (at < file.length && file[at] != '"') {
            at += file[at] == '\\' ? 2 : 1;
        }
        return Math.min(at + 1, file.length);
    }

    private boolean isKey(int from, int to) {
        if (to - from != KEY.length) {
            return false;
        }
        for (int i = 0; i < KEY.length; i++) {
            if (file[from + i] != KEY[i]) {
                return false;
            }
        }
        return true;
    }
}
