package lampwise.file;

/** Pasted text with one sign for each kind of digit, blank, dash and quotation mark. */
final class PastedText {
  private PastedText() {}

  /** The same text, character for character, so that lines and columns stay. */
  static SourceText plain(SourceText source) {
    String text = source.text();
    boolean ascii = true;
    for (int i = 0; i < text.length() && ascii; i++) {
      ascii = text.charAt(i) < 128;
    }
    if (ascii) {
      return source;
    }
    StringBuilder plain = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      plain.append(plain(text.charAt(i)));
    }
    return new SourceText(source.name(), plain.toString(), source.notes());
  }

  private static char plain(char c) {
    if (c < 128) {
      return c;
    }
    if (Character.isDigit(c)) {
      return (char) ('0' + Character.digit(c, 10));
    }
    return switch (Character.getType(c)) {
      case Character.SPACE_SEPARATOR, Character.FORMAT -> ' ';
      case Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> '\n';
      case Character.DASH_PUNCTUATION -> '-';
      default -> sign(c);
    };
  }

  private static char sign(char c) {
    return switch (c) {
      case '\u2212' -> '-'; // minus sign
      case '\u0085' -> '\n'; // next line
      case '\u2019', '\u2018', '\u2032' -> '\''; // quotation marks, prime
      case '\u201C', '\u201D', '\u2033' -> '"'; // quotation marks, double prime
      case '\u2022', '\u2023', '\u25E6', '\u25AA', '\u25CF', '\u00B7' -> '*'; // bullets
      case '\uFF1A' -> ':'; // full width
      case '\uFF1B' -> ';';
      case '\uFF0C', '\u3001', '\u060C' -> ','; // full width, ideographic, Arabic
      case '\uFF0E', '\u066B' -> '.'; // full width, Arabic decimal sign
      case '\uFF0B' -> '+';
      default -> c;
    };
  }
}
