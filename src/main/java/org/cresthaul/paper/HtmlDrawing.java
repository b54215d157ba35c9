package org.cresthaul.paper;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import org.cresthaul.paper.Drawing.Point;

/** A drawing as inline SVG. */
final class HtmlDrawing {
    private final StringBuilder html;

    HtmlDrawing(StringBuilder html) {
        this.html = html;
    }

    /** @param decorative when a word beside it says the same */
    void put(Drawing drawing, String cssClass, boolean decorative) {
        html.append("<svg class=\"")
                .append(cssClass)
                .append("\" viewBox=\"0 0 ")
                .append(number(drawing.width()))
                .append(' ')
                .append(number(drawing.height()))
                .append('"')
                .append(
                        decorative
                                ? " aria-hidden=\"true\">"
                                : " role=\"img\" aria-label=\"" + HtmlPaper.escaped(drawing.alt()) + "\">");
        for (Drawing.Shape shape : drawing.shapes()) {
            if (shape instanceof Drawing.Path path) {
                html.append("<path d=\"")
                        .append(path.lines().stream()
                                .map(l -> data(l, path.closed()))
                                .collect(Collectors.joining()))
                        .append('"')
                        .append(paint(path.fill(), path.stroke(), path.strokeWidth()));
                if (path.dashed()) {
                    html.append(" stroke-dasharray=\"")
                            .append(number(3 * path.strokeWidth()))
                            .append(' ')
                            .append(number(2 * path.strokeWidth()))
                            .append('"');
                }
                html.append("/>");
            } else if (shape instanceof Drawing.Circle c) {
                html.append("<circle cx=\"")
                        .append(number(c.center().x()))
                        .append("\" cy=\"")
                        .append(number(c.center().y()))
                        .append("\" r=\"")
                        .append(number(c.radius()))
                        .append('"')
                        .append(paint(c.fill(), c.stroke(), c.strokeWidth()))
                        .append("/>");
            } else if (shape instanceof Drawing.Lettering l) {
                html.append("<text x=\"")
                        .append(number(l.at().x()))
                        .append("\" y=\"")
                        .append(number(l.at().y()))
                        .append("\" font-size=\"")
                        .append(number(l.size()))
                        .append("\" text-anchor=\"")
                        .append(l.anchor().name().toLowerCase(java.util.Locale.ROOT))
                        .append("\" fill=\"")
                        .append(l.ink().css())
                        .append('"')
                        .append(l.bold() ? " font-weight=\"700\">" : ">")
                        .append(HtmlPaper.escaped(l.text()))
                        .append("</text>");
            }
        }
        html.append("</svg>");
    }

    private static String paint(Ink fill, Ink stroke, double width) {
        return " fill=\"" + fill.css() + "\" fill-rule=\"evenodd\" stroke=\"" + stroke.css() + "\""
                + (stroke.isNone() ? "" : " stroke-width=\"" + number(width) + "\" stroke-linejoin=\"round\"");
    }

    private static String data(List<Point> points, boolean closed) {
        StringBuilder data = new StringBuilder();
        for (Point p : points) {
            data.append(data.length() == 0 ? 'M' : 'L')
                    .append(number(p.x()))
                    .append(' ')
                    .append(number(p.y()));
        }
        return data.append(closed ? "Z" : "").toString();
    }

    private static String number(double value) {
        BigDecimal rounded =
                BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
