package lampwise.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * Makes one web page, with nothing outside it, of a template beside this class. A name in double
 * braces stands for a text that is given or for another file of that name. What comes from the user
 * or a sheet stands in a page only as JSON, which the page's script reads, or escaped.
 */
final class PageTemplate {
  private static final String OPEN = "{{";
  private static final String CLOSE = "}}";

  private PageTemplate() {}

  /**
   * The whole page.
   *
   * @param name the template's file
   * @param texts what stands for which name; it is put in as it is
   */
  static String filled(String name, Map<String, String> texts) {
    String template = resource(name);
    StringBuilder page = new StringBuilder();
    int done = 0;
    for (int open = template.indexOf(OPEN); open >= 0; open = template.indexOf(OPEN, done)) {
      int close = template.indexOf(CLOSE, open);
      String part = template.substring(open + OPEN.length(), close);
      page.append(template, done, open);
      String text = texts.get(part);
      page.append(text == null ? resource(part).stripTrailing() : text);
      done = close + CLOSE.length();
    }
    return page.append(template, done, template.length()).toString();
  }

  /**
   * A JSON string that may stand inside a script element: plain ASCII without any character that
   * could end the element or start a comment.
   */
  static String quoted(String text) {
    StringBuilder json = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean plain = c >= ' ' && c < 0x7f && "\"\\<>&".indexOf(c) < 0;
      json.append(plain ? String.valueOf(c) : String.format(Locale.ROOT, "\\u%04x", (int) c));
    }
    return json.append('"').toString();
  }

  private static String resource(String name) {
    try (InputStream in =
        Objects.requireNonNull(PageTemplate.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
