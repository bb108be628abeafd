package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import lampwise.light.Blink;
import lampwise.light.Window;

/**
 * What one recording offers: the blinks that were noted or found in it and the stretches in which
 * there is nothing to know.
 *
 * @param window the stretch that was watched
 * @param notes the blinks in order of time
 * @param blind stretches inside the window that were not watched, in order
 * @param settings the noise that is possible
 * @param finer settings that are looked at where those leave a doubt
 * @param resolutionSeconds gaps that differ by less than this are the same
 * @param stated whether the window was said or recorded, and is not just the reach of the blinks
 * @param level whether it is a light level that does not change, so that no blink means that
 *     nothing changed, and not that nothing shone
 */
record Evidence(
    Window window,
    List<Note> notes,
    List<Window> blind,
    List<Noise> settings,
    Optional<Supplier<NoiseGrid>> finer,
    double resolutionSeconds,
    boolean stated,
    boolean level) {
  /**
   * One blink as it was noted.
   *
   * @param on its start; where {@code onCut}, the time at which the lamp was on already
   * @param off its end, NaN if not known; where {@code offCut}, the time at which it was still on
   * @param onCut whether it may have begun before
   * @param offCut whether it may have gone on
   * @param probability how sure it is by itself that there was a blink
   */
  record Note(double on, double off, boolean onCut, boolean offCut, double probability) {
    boolean hasOff() {
      return !Double.isNaN(off);
    }

    double length() {
      return off - on;
    }
  }

  private static final double LONG_PAUSE_SECONDS = 60;

  /** A time is at the most this many standard deviations off. */
  private static final double FAR = 5;

  Evidence {
    notes = List.copyOf(notes);
    blind = List.copyOf(blind);
  }

  /** The same without finer settings. */
  Evidence(
      Window window,
      List<Note> notes,
      List<Window> blind,
      List<Noise> settings,
      double resolutionSeconds,
      boolean stated,
      boolean level) {
    this(window, notes, blind, settings, Optional.empty(), resolutionSeconds, stated, level);
  }

  /** The part of it inside a stretch; blinks belong to the stretch in which they start. */
  Evidence within(double from, double to) {
    double start = Math.max(from, window.fromSeconds());
    double end = Math.max(start, Math.min(to, window.toSeconds()));
    boolean last = end >= window.toSeconds();
    List<Note> inside =
        notes.stream().filter(n -> n.on() >= start && (n.on() < end || last)).toList();
    return new Evidence(
        new Window(start, end), inside, blind, settings, finer, resolutionSeconds, stated, level);
  }

  /** The same with other blinks. */
  Evidence with(List<Note> others) {
    boolean still = level && others.isEmpty();
    return new Evidence(window, others, blind, settings, finer, resolutionSeconds, stated, still);
  }

  /** The same without each of its blinks in turn. */
  List<Evidence> withoutEach() {
    List<Evidence> all = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      List<Note> others = new ArrayList<>(notes);
      others.remove(i);
      all.add(with(others));
    }
    return all;
  }

  /** The starts of the blinks, rising. */
  double[] starts() {
    return notes.stream().mapToDouble(Note::on).toArray();
  }

  /** The blinks as they stand by themselves. */
  List<SeenBlink> blinks() {
    return notes.stream()
        .map(n -> new SeenBlink(new Blink(n.on(), n.off()), n.probability()))
        .toList();
  }

  /** The same evidence with two of its noise settings, for a quick look. */
  Evidence roughly() {
    List<Noise> few = List.of(usualSettings().get(1), settings.get(settings.size() - 1));
    return new Evidence(
        window, notes, blind, few, Optional.empty(), resolutionSeconds, stated, level);
  }

  /** The noise settings that are at least half as common as the commonest. */
  List<Noise> usualSettings() {
    double most = settings.stream().mapToDouble(Noise::weight).max().orElse(0);
    return settings.stream().filter(noise -> noise.weight() >= 0.5 * most).toList();
  }

  /** The same up to its blink of this number; the same evidence if it has no more. */
  Evidence beginning(int blinks) {
    return notes.size() <= blinks ? this : within(window.fromSeconds(), notes.get(blinks).on());
  }

  /**
   * The stretches between long pauses, after which the phase of a rhythm is taken as unknown again;
   * none if nothing was watched.
   */
  List<Evidence> pieces() {
    List<Evidence> pieces = new ArrayList<>();
    double from = window.fromSeconds();
    boolean open = true;
    for (Window gap : blind) {
      if (gap.lengthSeconds() > LONG_PAUSE_SECONDS
          && gap.toSeconds() > from
          && gap.fromSeconds() < window.toSeconds()) {
        if (gap.fromSeconds() > from) {
          pieces.add(within(from, gap.fromSeconds()));
        }
        from = gap.toSeconds();
        open = from < window.toSeconds();
      }
    }
    if (pieces.isEmpty() && from == window.fromSeconds()) {
      return List.of(this);
    }
    if (open) {
      pieces.add(within(from, window.toSeconds()));
    }
    return pieces;
  }

  /** Seconds of the window that were really watched. */
  double watchedSeconds() {
    double seconds = window.lengthSeconds();
    for (Window gap : blind) {
      double from = Math.max(gap.fromSeconds(), window.fromSeconds());
      double to = Math.min(gap.toSeconds(), window.toSeconds());
      seconds -= Math.max(0, to - from);
    }
    return Math.max(0, seconds);
  }

  /** Whether one blink covers all that was watched. */
  boolean litThroughout() {
    return notes.size() == 1 && notes.get(0).onCut() && notes.get(0).offCut();
  }

  boolean hasLengths() {
    for (Note note : notes) {
      if (note.hasOff()) {
        return true;
      }
    }
    return false;
  }

  /**
   * Chance that a pulse about this time would have been watched: its time is known up to a normal
   * error.
   */
  double watched(double seconds, double sd) {
    double inside = inside(window, seconds, sd);
    if (blind.isEmpty()) {
      return inside;
    }
    for (Window gap : blind) {
      inside -= inside(gap, seconds, sd);
    }
    return Math.max(0, inside);
  }

  private static double inside(Window stretch, double seconds, double sd) {
    double reach = FAR * sd;
    double below = stretch.fromSeconds() - seconds;
    double above = stretch.toSeconds() - seconds;
    if (below < -reach && above > reach) {
      return 1;
    }
    if (below > reach || above < -reach) {
      return 0;
    }
    return Gauss.cumulative(above / sd) - Gauss.cumulative(below / sd);
  }
}
