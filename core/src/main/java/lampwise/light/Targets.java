package lampwise.light;

import java.util.List;

/**
 * What is known of targets during a recording. No mark means not known; {@link #none()} says that
 * nobody was there; marked spans say that a target was there inside them and not outside.
 *
 * @param knowledge how much is known
 * @param spans when a target was in range, in order of time; empty unless {@code KNOWN}
 */
public record Targets(Knowledge knowledge, List<TargetSpan> spans) {
  /** How much is known. */
  public enum Knowledge {
    /** Nothing was said. */
    UNKNOWN,
    /** Nothing was said, but the recording device itself was near enough to be a target. */
    LIKELY,
    /** The spans say it all. */
    KNOWN
  }

  /**
   * Keeps a sorted copy of the spans.
   *
   * @throws RecordingException if spans are given without being known
   */
  public Targets {
    spans =
        spans.stream().sorted((a, b) -> Double.compare(a.fromSeconds(), b.fromSeconds())).toList();
    if (knowledge != Knowledge.KNOWN && !spans.isEmpty()) {
      throw new RecordingException("target spans are given, so targets are known");
    }
  }

  /**
   * Nothing was said.
   *
   * @return targets not known
   */
  public static Targets unknown() {
    return new Targets(Knowledge.UNKNOWN, List.of());
  }

  /**
   * Nothing was said, but the device was close.
   *
   * @return a target is likely
   */
  public static Targets likely() {
    return new Targets(Knowledge.LIKELY, List.of());
  }

  /**
   * Nobody was there.
   *
   * @return no target at any time
   */
  public static Targets none() {
    return new Targets(Knowledge.KNOWN, List.of());
  }

  /**
   * A target was there inside the spans and not outside.
   *
   * @param spans the spans, in any order
   * @return known targets
   */
  public static Targets during(List<TargetSpan> spans) {
    return new Targets(Knowledge.KNOWN, spans);
  }
}
