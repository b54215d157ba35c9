package org.cresthaul.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class RigFileTest {
    @Test
    void readsASoundRig() throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG);
        assertEquals(4, rig.notches().size());
        assertEquals(-0.0381, rig.notches().get(0).offsetM(), 1e-12);
        assertEquals(3, rig.stances().get(0).trailer().axles().axles().size());
    }
}
