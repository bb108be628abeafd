package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * Clean recordings of a state's lamp: starts and ends of every light, three cycles of what repeats
 * and at least as long as the sheet's slowest state needs, with the marks of what makes it show.
 * What the phrase leaves open has a typical length.
 */
final class ShownLamp {
  private static final double TRIGGER_SECONDS = 5;
  private static final double ANSWER_SECONDS = 0.4;
  private static final double HAND_SECONDS = 10;
  private static final double AWAY_SECONDS = 15;

  private ShownLamp() {}

  static BlinkLog of(LampState state, OptionalDouble sheetBlink, double leastSeconds) {
    RhythmTimes times = RhythmTimes.of(typical(state.rhythm()), sheetBlink);
    double rounds = times.repeats() ? 3 : 1;
    double shown =
        Math.max(leastSeconds, times.preludeSeconds() + rounds * times.cycleSeconds() + 1);
    boolean triggered = state.seen() != Seen.ALWAYS && state.seen() != Seen.IDLE;
    double start = triggered ? TRIGGER_SECONDS + ANSWER_SECONDS : 0;
    if (state.seen() == Seen.AFTER_TARGET) {
      start += TRIGGER_SECONDS;
    }
    double end = start + shown;
    double seenUntil = end;
    if (state.seen() == Seen.TARGET) {
      double needed = times.preludeSeconds() + rounds * times.cycleSeconds() + 1;
      seenUntil = start + Math.max(HAND_SECONDS, needed);
      end = Math.max(end, seenUntil + AWAY_SECONDS);
    }
    Marks marks =
        Marks.watched(0, end).withTargets(Targets.during(targets(state.seen(), seenUntil)));
    return new BlinkLog(
        Origin.named("clean"),
        marks.withEvents(events(state.seen())),
        lights(times, triggered ? start : -1.3, seenUntil));
  }

  /** A lamp that winks off now and then is lit most of the time. */
  private static Rhythm typical(Rhythm rhythm) {
    try {
      return rhythm.equals(Phrase.parse("steady then dark repeating"))
          ? Phrase.parse("steady 6 s then dark 0.3 s repeating")
          : rhythm;
    } catch (PhraseException e) {
      throw new AssertionError(e);
    }
  }

  private static List<Blink> lights(RhythmTimes times, double start, double end) {
    List<Blink> lights = new ArrayList<>();
    double at = start;
    double lit = Double.NaN;
    for (RhythmTimes.Stretch stretch : times.over(end - start)) {
      if (stretch.lit() && Double.isNaN(lit)) {
        lit = at;
      }
      if (!stretch.lit() && !Double.isNaN(lit)) {
        add(lights, lit, at, end);
        lit = Double.NaN;
      }
      at += stretch.seconds();
    }
    if (!Double.isNaN(lit)) {
      add(lights, lit, end, end);
    }
    return lights;
  }

  /** What of a light lies inside the window. */
  private static void add(List<Blink> lights, double on, double off, double end) {
    if (off > 0 && on < end) {
      lights.add(new Blink(Math.max(0, on), Math.min(off, end)));
    }
  }

  private static List<TargetSpan> targets(Seen seen, double left) {
    return switch (seen) {
      case TARGET -> List.of(new TargetSpan(TRIGGER_SECONDS, left));
      case AFTER_TARGET -> List.of(new TargetSpan(TRIGGER_SECONDS, 2 * TRIGGER_SECONDS));
      default -> List.of();
    };
  }

  private static List<Event> events(Seen seen) {
    return switch (seen) {
      case AFTER_FLUSH, WHILE_RUNNING -> List.of(new Event(Event.Kind.FLUSH, TRIGGER_SECONDS));
      case AFTER_POWER_UP -> List.of(new Event(Event.Kind.POWER_UP, TRIGGER_SECONDS));
      case AFTER_BUTTON, SET_UP -> List.of(new Event(Event.Kind.BUTTON, TRIGGER_SECONDS));
      default -> List.of();
    };
  }
}
