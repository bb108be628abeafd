package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** Any bytes whatever give a guide, a site, or a typed refusal. */
class GuideReaderTotalTest {
  private static final String SITE =
      """
      lampwise-site: 1
      title: Somewhere
      shares: {empty: {dead: 4}}
      minutes: {renew: 6}
      water: {price: 4.2, currency: EUR, per: 1 m3}
      limits:
        - {of: flow, at-most: 0.5 gpm, basis: a code}
      """;

  @Property(tries = 300)
  void anySpoiltGuideIsReadOrRefused(
      @ForAll @IntRange(max = 100_000) int at, @ForAll @Size(max = 4) byte[] in) {
    byte[] bytes = spoilt(GuideText.SMALL, at, in);
    try {
      assertNotNull(GuideReader.read("spoilt", bytes));
    } catch (FileException e) {
      assertFalse(e.faults().isEmpty());
    }
  }

  @Property(tries = 300)
  void anySpoiltSiteIsReadOrRefused(
      @ForAll @IntRange(max = 100_000) int at, @ForAll @Size(max = 4) byte[] in)
      throws FileException {
    byte[] bytes = spoilt(SITE, at, in);
    try {
      assertNotNull(SiteReader.read("spoilt", bytes, GuideText.read(GuideText.SMALL)));
    } catch (FileException e) {
      assertFalse(e.faults().isEmpty());
    }
  }

  /** The text with some bytes over its own, at a place in it. */
  private static byte[] spoilt(String text, int at, byte[] in) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < in.length; i++) {
      bytes[(at + i) % bytes.length] = in[i];
    }
    return bytes;
  }
}
