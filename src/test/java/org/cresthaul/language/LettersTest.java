package org.cresthaul.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LettersTest {
    /** As the columns of a spreadsheet are lettered; how many have up to n letters is 26 + 26² and so on. */
    @Test
    void goOnAfterZWithTwoLettersAndNeverRepeat() {
        assertEquals(
                List.of("A", "B", "Z", "AA", "AZ", "BA", "ZZ", "AAA"),
                IntStream.of(0, 1, 25, 26, 51, 52, 26 + 26 * 26 - 1, 26 + 26 * 26)
                        .mapToObj(Letters::of)
                        .toList());
        assertEquals(
                1000, IntStream.range(0, 1000).mapToObj(Letters::of).distinct().count());
        assertThrows(IllegalArgumentException.class, () -> Letters.of(-1));
    }
}
