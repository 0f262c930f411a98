package squeezewell.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import squeezewell.review.judge.Sentence;
import squeezewell.review.say.Feedback;
import squeezewell.words.Wording;

/**
 * A page that grows from top to bottom. It asks for nothing from outside: no script, no font, no
 * picture but those drawn in it. Every text is escaped.
 */
final class HtmlPage {
  private static final String STYLE = style();
  private static final Wording WORDS = Wording.beside(HtmlPage.class);

  private final StringBuilder page = new StringBuilder();

  /**
   * Begins a page.
   *
   * @param style what is added to the style of all pages
   * @param kind the class of its body; empty for none
   */
  HtmlPage(String title, String style, String kind) {
    add("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
    add("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
    add("<meta http-equiv=\"Content-Security-Policy\"");
    add(" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n");
    add("<title>" + text(title) + "</title>\n<style>\n" + STYLE + style);
    add("</style>\n</head>\n<body" + attribute(kind) + ">\n");
  }

  private static String style() {
    try (InputStream css = HtmlPage.class.getResourceAsStream("page.css")) {
      return new String(css.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("the style of pages can't be read", e);
    }
  }

  /**
   * Makes any text safe between tags and inside quoted attributes. Control signs, and those that
   * change the direction of writing, are replaced.
   */
  static String text(String text) {
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.appendCodePoint(PlainText.isHidden(c) ? '\uFFFD' : c);
              }
            });
    return out.toString();
  }

  private static String attribute(String kind) {
    return kind.isEmpty() ? "" : " class=\"" + kind + "\"";
  }

  /** Adds HTML as it is. */
  void add(String html) {
    page.append(html);
  }

  /** Adds an element with a text; the class may be empty. */
  void element(String tag, String kind, String text) {
    add("<" + tag + attribute(kind) + ">" + text(text) + "</" + tag + ">\n");
  }

  void heading(String text) {
    element("h2", "", text);
  }

  /** Adds a division around what is added meanwhile. */
  void block(String kind, Runnable inside) {
    add("<div" + attribute(kind) + ">\n");
    inside.run();
    add("</div>\n");
  }

  /** Adds a list, if there is anything on it. */
  void list(List<String> lines) {
    if (!lines.isEmpty()) {
      add("<ul>\n");
      lines.forEach(line -> element("li", "", line));
      add("</ul>\n");
    }
  }

  /** Adds a figure to be seen first, with a note in an element of a class. */
  void card(String value, String name, String tag, String kind, String note) {
    add("<div class=\"card\"><b>" + text(value) + "</b>" + text(name));
    add("<" + tag + attribute(kind) + ">" + text(note) + "</" + tag + "></div>\n");
  }

  /** Adds a finding, with a word before its title; none if that is empty. */
  void finding(String word, Feedback finding) {
    add("<div class=\"finding\">");
    add(word.isEmpty() ? "" : "<span class=\"word\">" + text(word) + "</span>");
    add("<b>" + text(finding.title()) + "</b>" + text(finding.brief()));
    for (Feedback.Paragraph why : finding.paragraphs(Sentence.Kind.WHY)) {
      add("<details><summary>" + text(WORDS.say("why")) + "</summary>" + text(why.text()));
      add(" <span class=\"word\">" + text(WORDS.say("why.source", why.source())));
      add("</span></details>");
    }
    add("</div>\n");
  }

  void figure(ReportPicture picture) {
    add("<figure>\n" + picture.svg() + "</figure>\n");
  }

  /** Adds the caution and ends the page, which it gives. */
  String end() {
    element("p", "caution", Caution.TEXT);
    add("</body>\n</html>\n");
    return page.toString();
  }
}
