package org.cresthaul.paper;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cresthaul.language.Code;
import org.cresthaul.report.Verdict;

/** A paper as one HTML file that needs nothing else: style and drawings inside, no script. */
final class HtmlPaper {
    private final Paper paper;
    private final StringBuilder html = new StringBuilder();
    private final HtmlDrawing drawings = new HtmlDrawing(html);

    HtmlPaper(Paper paper) {
        this.paper = paper;
    }

    byte[] bytes() {
        html.append("<!doctype html>\n<html lang=\"")
                .append(paper.catalog().tag())
                .append("\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .append(
                        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n")
                .append("<title>")
                .append(escaped(paper.title() + ": " + paper.subject()))
                .append("</title>\n<style>")
                .append(PaperStyle.text())
                .append("</style>\n</head>\n<body class=\"")
                .append(paper.large() ? "large" : "desk")
                .append("\">\n");
        html.append("<header><p class=\"name\">")
                .append(escaped(paper.title()))
                .append("</p><p>")
                .append(escaped(paper.subject()))
                .append("</p>");
        if (paper.parts().size() > 1) {
            html.append("<nav aria-label=\"")
                    .append(escaped(text(Code.PAPER_PARTS)))
                    .append("\"><ul>");
            for (int i = 0; i < paper.parts().size(); i++) {
                html.append("<li><a href=\"#part-")
                        .append(i + 1)
                        .append("\">")
                        .append(escaped(paper.parts().get(i).title()))
                        .append("</a></li>");
            }
            html.append("</ul></nav>");
        }
        html.append("</header>\n<main>\n");
        for (int i = 0; i < paper.parts().size(); i++) {
            part(paper.parts().get(i), i + 1);
        }
        html.append("</main>\n<footer><p>")
                .append(escaped(String.join("  ·  ", paper.imprint())))
                .append("</p></footer>\n</body>\n</html>\n");
        return html.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void part(Paper.Part part, int number) {
        html.append("<section class=\"sheet\" id=\"part-")
                .append(number)
                .append("\">\n<div class=\"running\"><p class=\"headline")
                .append(paper.drivable() ? "" : " barred")
                .append("\">")
                .append(escaped(paper.headline()))
                .append("</p></div>\n")
                .append("<div class=\"content\">\n<h1>")
                .append(escaped(part.title()))
                .append("</h1>\n");
        blocks(part.blocks());
        if (!part.flow().isEmpty()) {
            html.append("<div class=\"flow\">\n");
            blocks(part.flow());
            html.append("</div>\n");
        }
        html.append("</div>\n</section>\n");
    }

    private void blocks(List<Paper.Block> blocks) {
        boolean list = false;
        for (Paper.Block block : blocks) {
            boolean item = block instanceof Paper.Item;
            if (item != list) {
                html.append(item ? "<ul class=\"items\">\n" : "</ul>\n");
                list = item;
            }
            block(block);
        }
        html.append(list ? "</ul>\n" : "");
    }

    private void block(Paper.Block block) {
        if (block instanceof Paper.Heading h) {
            html.append("<h")
                    .append(h.level())
                    .append('>')
                    .append(escaped(h.text()))
                    .append("</h")
                    .append(h.level())
                    .append(">\n");
        } else if (block instanceof Paper.Text t) {
            html.append("<p class=\"")
                    .append(t.tone().name().toLowerCase(java.util.Locale.ROOT))
                    .append("\">")
                    .append(escaped(t.text()))
                    .append("</p>\n");
        } else if (block instanceof Paper.Item i) {
            item(i);
        } else if (block instanceof Paper.Milestone m) {
            milestone(m);
        } else if (block instanceof Paper.Table t) {
            table(t);
        } else if (block instanceof Paper.Picture p) {
            html.append("<figure><div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"")
                    .append(escaped(text(Code.PAPER_DRAWING)))
                    .append("\">");
            drawings.put(p.drawing(), "drawing", false);
            html.append("</div><figcaption>").append(escaped(p.caption())).append("</figcaption></figure>\n");
        } else if (block instanceof Paper.Signatures s) {
            s.who()
                    .forEach(w -> html.append("<p class=\"sign\"><span>")
                            .append(escaped(w))
                            .append("</span> <span>")
                            .append(escaped(text(Code.PAPER_DATE)))
                            .append("</span></p>\n"));
        } else if (block instanceof Paper.Group g) {
            html.append("<div class=\"group\">\n");
            blocks(g.blocks());
            html.append("</div>\n");
        }
    }

    private void item(Paper.Item item) {
        String text = escaped(item.shown());
        html.append("<li class=\"")
                .append(item.box().name().toLowerCase(java.util.Locale.ROOT))
                .append("\">");
        if (item.box() == Paper.Box.TICK) {
            html.append("<label><input type=\"checkbox\"><span>").append(text).append("</span></label>");
        } else {
            html.append("<span>").append(text).append("</span>");
        }
        html.append("</li>\n");
    }

    private void milestone(Paper.Milestone m) {
        html.append("<h2 class=\"milestone\"><span class=\"at\">")
                .append(escaped(m.chainage()))
                .append("</span> <span class=\"what\">")
                .append(escaped(m.title()))
                .append("</span>");
        if (m.verdict() != null) {
            html.append(" <span class=\"verdict")
                    .append(m.blocked() ? " stop" : "")
                    .append("\">");
            symbol(m.verdict());
            html.append(escaped(Paper.words(m.verdict(), m.blocked(), paper.catalog())))
                    .append("</span>");
        }
        html.append("</h2>\n");
    }

    private void symbol(Verdict verdict) {
        drawings.put(
                new Drawing(16, 16, paper.catalog().word(verdict), Symbols.verdict(verdict, 0, 0, 16)), "symbol", true);
    }

    private void table(Paper.Table t) {
        html.append("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"")
                .append(escaped(t.caption().isEmpty() ? text(Code.PAPER_TABLE) : t.caption()))
                .append("\"><table>");
        if (!t.caption().isEmpty()) {
            html.append("<caption>").append(escaped(t.caption())).append("</caption>");
        }
        if (t.columns().stream().anyMatch(c -> !c.title().isEmpty())) {
            html.append("<thead><tr>");
            t.columns()
                    .forEach(c -> html.append("<th scope=\"col\"")
                            .append(c.right() ? " class=\"right\">" : ">")
                            .append(escaped(c.title()))
                            .append("</th>"));
            html.append("</tr></thead>");
        }
        html.append("<tbody>\n");
        for (List<Paper.Cell> row : t.rows()) {
            html.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                html.append(t.columns().get(i).right() ? "<td class=\"right\">" : "<td>");
                if (row.get(i).verdict() != null) {
                    symbol(row.get(i).verdict());
                }
                html.append(escaped(row.get(i).text())).append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</tbody></table></div>\n");
    }

    /** Text of a file as text of the page, whatever it holds. */
    private String text(Code code) {
        return paper.catalog().text(code);
    }

    static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        for (char c : text.toCharArray()) {
            switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.append(c);
            }
        }
        return escaped.toString();
    }
}
