package org.cresthaul.route;

/** What is over the road: it is passed under, and its height is told in the same ways. */
public sealed interface Overhead extends Hazard permits LowStructure, OverheadWire {
    /** Its height, and the road under it. */
    LowStructure height();
}
