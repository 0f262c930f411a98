package squeezewell.report;

/** Text inside HTML. */
final class Html {
  private Html() {}

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
}
