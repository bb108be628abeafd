package lampwise.sim;

import java.util.List;
import lampwise.rhythm.Size;

/**
 * A part of a rhythm that is light, with values: blinks of one length at one spacing, or a light of
 * some length.
 *
 * @param count how many blinks, one or more
 * @param size their length in words
 * @param length the length of each; blinks of one size and unsaid length share it
 * @param apart from start to start; of no meaning for one blink
 * @param steady whether it was said as a light, not as blinks
 */
record LaidLight(int count, Size size, Amount length, Amount apart, boolean steady) {
  /** From the start of the first to the end of the last. */
  double extent() {
    return (count - 1) * spacing() + length.value();
  }

  /** From start to start; zero for one blink. */
  double spacing() {
    return count > 1 ? apart.value() : 0;
  }

  /** Whether its length is a light's of which nothing was said. */
  boolean isOpen() {
    return steady && !length.isSaid();
  }

  boolean isSound() {
    return length.value() > 0 && (count == 1 || length.value() < apart.value());
  }

  /** Makes the length less than the spacing, whatever was said. */
  void mend() {
    if (!isSound()) {
      length.set(Math.max(Double.MIN_VALUE, apart.value() / 2));
    }
  }

  /** Adds its pulses and gives the time of its end. */
  double lay(double from, List<DrawnRhythm.Pulse> pulses) {
    for (int i = 0; i < count; i++) {
      pulses.add(new DrawnRhythm.Pulse(from + i * spacing(), length.value()));
    }
    return from + extent();
  }
}
