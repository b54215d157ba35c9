package org.cresthaul.units;

/**
 * One of a closed set of values, with the word that stands for it in files, requests and answers. What the program does
 * hangs on the value; the word is read and written at the edges only.
 */
public interface Worded {
    /** Never changed: files hold it. */
    String word();
}
