package org.cresthaul.server;

import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.util.regex.Pattern;

/**
 * One operation of the API.
 *
 * @param method what it is asked with; GET answers HEAD as well
 * @param path with {name} for a part that varies, as in the OpenAPI document
 */
record Endpoint(HandlerType method, String path, Handler handler) {
    boolean isAt(String asked) {
        return Pattern.matches(path.replaceAll("\\{\\w+}", "[^/]+"), asked);
    }
}
