package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TilesTest {
    @ParameterizedTest
    @CsvSource({
        "https://tiles.example.org/{z}/{x}/{y}.png, https://tiles.example.org",
        "http://localhost:8080/tiles/{z}/{x}/{y}.png?key=1&v=2, http://localhost:8080",
        "https://{s}.tiles.example.org/{z}/{x}/{y}@2x.png, https://*.tiles.example.org",
    })
    void namesWhereImagesComeFrom(String url, String source) {
        assertEquals(source, new Tiles(url, "Example").source());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "tiles.example.org/{z}/{x}/{y}.png",
                "ftp://tiles.example.org/{z}/{x}/{y}.png",
                "https://tiles.example.org/",
                "https://tiles.example.org/{z}/{x}.png",
                "https://tiles.example.org; script-src */{z}/{x}/{y}",
                "https://tiles.example.org/{z}/{x}/{y};script-src *",
                "https://tiles.example.org/{z}/{x}/{y} ",
                "https://tiles.example.org\r\nX: 1/{z}/{x}/{y}",
                "https://*/{z}/{x}/{y}",
                "https://a.example@b.example/{z}/{x}/{y}",
                "javascript://x/{z}/{x}/{y}"
            })
    void refusesWhatCouldAddToThePolicy(String url) {
        assertThrows(IllegalArgumentException.class, () -> new Tiles(url, "Example"));
    }

    @Test
    void needsItsAttribution() {
        assertThrows(IllegalArgumentException.class, () -> new Tiles("https://tiles.example.org/{z}/{x}/{y}.png", " "));
    }
}
