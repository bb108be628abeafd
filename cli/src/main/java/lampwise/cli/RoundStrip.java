package lampwise.cli;

import java.util.List;
import java.util.Optional;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.light.Blink;
import lampwise.light.Window;
import lampwise.service.LampRead;

/** Draws the blinks of a recording as a strip, in black on white. */
final class RoundStrip {
  private static final int WIDTH = 480;
  private static final int HEIGHT = 46;
  private static final double EDGE = 4;
  private static final double TOP = 4;
  private static final double BASE = 28;
  private static final double LEAST_WIDE = 2;
  private static final double LEAST_SECONDS = 1;
  private static final int MOST_BLINKS = 400;

  private RoundStrip() {}

  /**
   * The strip as a whole SVG document that can also stand inside a page, without ids, styles and
   * references. Nothing is drawn of a recording that shows no time.
   */
  static String svg(LampRead lamp) {
    if (lamp.strip().isEmpty()) {
      return "";
    }
    LampRead.Strip strip = lamp.strip().get();
    double from = strip.fromSeconds();
    double seconds = Math.max(LEAST_SECONDS, strip.toSeconds() - from);
    double scale = (WIDTH - 2 * EDGE) / seconds;
    StringBuilder svg = new StringBuilder();
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"").append(WIDTH);
    svg.append("\" height=\"").append(HEIGHT).append("\" viewBox=\"0 0 ").append(WIDTH);
    svg.append(' ').append(HEIGHT).append("\" font-family=\"sans-serif\" font-size=\"14\">\n");
    svg.append("<title>")
        .append(RhythmStrip.escaped(Layout.clean(title(lamp.recording(), strip, seconds))));
    svg.append("</title>\n<path d=\"M").append(number(EDGE)).append(' ').append(number(BASE));
    svg.append('H').append(number(WIDTH - EDGE)).append("\" stroke=\"#000\" fill=\"none\"/>\n");
    for (LampRead.Lit lit : strip.lit()) {
      double at = Math.max(0, Math.min(seconds, lit.onSeconds() - from));
      double wide = Math.max(LEAST_WIDE, Math.min(lit.lengthSeconds(), seconds - at) * scale);
      svg.append("<rect x=\"").append(number(EDGE + at * scale)).append("\" y=\"");
      svg.append(number(TOP)).append("\" width=\"").append(number(wide)).append("\" height=\"");
      svg.append(number(BASE - TOP)).append("\" fill=\"#000\"/>\n");
    }
    String y = number(HEIGHT - 4.0);
    svg.append("<text x=\"").append(number(EDGE)).append("\" y=\"").append(y);
    svg.append("\">0</text>\n<text x=\"").append(number(WIDTH - EDGE)).append("\" y=\"");
    svg.append(y).append("\" text-anchor=\"end\">").append(Words.duration(seconds));
    return svg.append("</text>\n</svg>\n").toString();
  }

  private static String title(String recording, LampRead.Strip strip, double seconds) {
    return recording
        + ": "
        + Words.count(strip.lit().size(), "blink")
        + " in "
        + Words.duration(seconds);
  }

  /** What is drawn of a reading: its blinks, {@value #MOST_BLINKS} at the most. */
  static Optional<LampRead.Strip> of(Reading reading) {
    Optional<Observation> main = reading.main();
    List<Blink> blinks =
        main.map(Observation::blinks).orElse(List.of()).stream()
            .limit(MOST_BLINKS)
            .map(SeenBlink::blink)
            .toList();
    Optional<Window> window = main.flatMap(Observation::window);
    if (window.isEmpty() && blinks.isEmpty()) {
      return Optional.empty();
    }
    double from = window.map(Window::fromSeconds).orElseGet(() -> blinks.get(0).onSeconds());
    double to =
        window.map(Window::toSeconds).orElseGet(() -> blinks.get(blinks.size() - 1).onSeconds());
    return Optional.of(new LampRead.Strip(from, to, blinks.stream().map(RoundStrip::lit).toList()));
  }

  private static LampRead.Lit lit(Blink blink) {
    double length = blink.hasOff() ? blink.offSeconds() - blink.onSeconds() : 0;
    return new LampRead.Lit(blink.onSeconds(), length);
  }

  private static String number(double value) {
    return Words.decimal(value, 2);
  }
}
