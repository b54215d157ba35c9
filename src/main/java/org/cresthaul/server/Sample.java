package org.cresthaul.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.units.Problems;

/** A route or rig file that the page offers to open. Immutable. */
public final class Sample {
    private static final String[] ENDINGS = {".basemap.geojson", ".route.geojson", ".rig.json", ".geojson", ".json"};

    private final String fileName;
    private final byte[] document;

    public Sample(String fileName, byte[] document) {
        this.fileName = fileName;
        this.document = document.clone();
    }

    /** The file's name without its ending. */
    public String id() {
        for (String ending : ENDINGS) {
            if (fileName.toLowerCase(Locale.ROOT).endsWith(ending) && fileName.length() > ending.length()) {
                return fileName.substring(0, fileName.length() - ending.length());
            }
        }
        return fileName;
    }

    /** What the file calls itself; its id when it does not say. */
    public String name() {
        JsonNode name = JsonText.read(document, new Problems()).path("name");
        return name.isTextual() && !name.textValue().isBlank() ? name.textValue() : id();
    }

    /** The file's bytes, as they are. */
    public byte[] document() {
        return document.clone();
    }
}
