package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Window;

/**
 * A light or a shadow of the room that comes and goes: long lights and darks that keep to nothing.
 * Each lasts as long as it likes, even in the logarithm; a lamp's rhythm has to say more of them.
 */
final class RoomLight {
  /** Shorter lights and darks are hardly the room's, longer ones have no end, seconds (chosen). */
  private static final double LEAST_SECONDS = 0.3;

  private static final double MOST_SECONDS = 120;

  private static final double LOG_RANGE = Math.log(MOST_SECONDS / LEAST_SECONDS);

  private RoomLight() {}

  /**
   * The logarithm of the likelihood of what was found if the lamp is dark: long lights are the
   * room's, short ones strays.
   */
  static double logLikelihood(Evidence stretch) {
    Window window = stretch.window();
    List<Evidence.Note> strays = new ArrayList<>();
    double sum = 0;
    double dark = window.fromSeconds();
    boolean lit = false;
    for (Evidence.Note note : stretch.notes()) {
      boolean cut = note.onCut() || note.offCut();
      if (!note.hasOff() || (!cut && note.length() < LEAST_SECONDS)) {
        strays.add(note);
        continue;
      }
      sum += note.onCut() ? 0 : logDensity(note.on() - dark);
      sum += cut ? logStill(note.length()) : logDensity(note.length());
      dark = note.off();
      lit = note.offCut();
    }
    sum += lit ? 0 : logStill(window.toSeconds() - dark);
    double weights = 0;
    double logStrays = Double.NEGATIVE_INFINITY;
    for (Noise noise : stretch.settings()) {
      weights += noise.weight();
      double log = Math.log(noise.weight()) + Strays.log(stretch.with(strays), noise);
      logStrays = Gauss.logAdd(logStrays, log);
    }
    return sum + logStrays - Math.log(weights);
  }

  /** Even in the logarithm between the borders, below them soon rare. */
  private static double logDensity(double seconds) {
    double least = Math.max(seconds, 0.1 * LEAST_SECONDS);
    double log = -Math.log(least * LOG_RANGE);
    return least < LEAST_SECONDS ? log - 4 * Math.log(LEAST_SECONDS / least) : log;
  }

  /** The chance that one lasts longer. */
  private static double logStill(double seconds) {
    double least = Math.max(seconds, LEAST_SECONDS);
    return Math.log(Math.max(0.01, Math.log(MOST_SECONDS / least) / LOG_RANGE));
  }
}
