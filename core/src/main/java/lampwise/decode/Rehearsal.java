package lampwise.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lampwise.light.Window;

/**
 * Recordings of one state as a way of recording would make them: always the same ones, so that a
 * plan is the same each time, and a longer one of a number holds the shorter one. Phases and clocks
 * are laid out evenly (Halton, Numerische Mathematik 2, 1960), what people do wrong comes from the
 * mixing function of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
 */
final class Rehearsal {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  /** How long what is noted by mistake seems to last. */
  private static final double STRAY_SECONDS = 0.1;

  private final Watching watching;
  private final boolean triggered;

  /**
   * Prepares recordings.
   *
   * @param triggered whether each begins with what makes the lamp show
   */
  Rehearsal(Watching watching, boolean triggered) {
    this.watching = watching;
    this.triggered = triggered;
  }

  /**
   * One recording.
   *
   * @param trains what the lamp may do, each with its weight; none if it is dark
   * @param number the recording's number
   * @param seconds how long it is
   */
  Evidence of(List<Train> trains, int number, double seconds) {
    Stream lamp = new Stream(mix(number + 1L));
    Stream mistakes = new Stream(mix(-number - 1L));
    List<Evidence.Note> notes = new ArrayList<>();
    if (!trains.isEmpty()) {
      Train train = chosen(trains, even(number, 5));
      double clock = train.low() + (train.high() - train.low()) * even(number, 3);
      blinks(train, clock, even(number, 2), lamp, seconds, notes);
    }
    double strays = watching.straysPerSecond();
    double time = strays > 0 ? mistakes.exponential(strays) : Double.POSITIVE_INFINITY;
    while (time < seconds) {
      notes.add(note(time, watching.ends() ? time + STRAY_SECONDS : Double.NaN));
      time += mistakes.exponential(strays);
    }
    notes.sort(Comparator.comparingDouble(Evidence.Note::on));
    return new Evidence(
        new Window(0, seconds),
        notes,
        List.of(),
        List.of(watching.noise()),
        watching.resolutionSeconds(),
        true,
        false);
  }

  private static Train chosen(List<Train> trains, double at) {
    double sum = 0;
    for (Train train : trains) {
      sum += Math.exp(train.logWeight());
    }
    double left = at * sum;
    for (Train train : trains) {
      left -= Math.exp(train.logWeight());
      if (left < 0) {
        return train;
      }
    }
    return trains.get(trains.size() - 1);
  }

  private void blinks(
      Train train,
      double stretch,
      double phase,
      Stream lamp,
      double seconds,
      List<Evidence.Note> notes) {
    boolean begins = triggered || !train.repeats() || train.prelude() > 0;
    double start = begins ? Fit.TRIGGER_SECONDS * phase : -phase * train.cycleSeconds() * stretch;
    int last = train.repeats() ? train.last() : train.size() - 1;
    for (int pulse = 0; pulse <= last; pulse++) {
      double on = start + stretch * train.on(pulse);
      if (!(on <= seconds)) {
        break;
      }
      double late = isFirst(train, pulse, on, stretch) ? watching.firstLateSeconds() : 0;
      double noted = on + late + watching.timingSdSeconds() * lamp.normal();
      boolean missed = lamp.next() < watching.missed();
      double lasts = watching.ends() ? lasts(train, pulse, stretch, lamp) : Double.NaN;
      if (missed) {
        continue;
      }
      if (on >= 0 && noted >= 0 && noted <= seconds) {
        notes.add(cut(noted, noted + lasts, 0, seconds));
      } else if (on < 0 && on + lasts > 0) {
        notes.add(cut(on, on + lasts, 0, seconds));
      }
    }
  }

  /** Whether a pulse opens a burst or is the first that is seen of one. */
  private static boolean isFirst(Train train, int pulse, double on, double stretch) {
    return train.opensBurst(pulse) || on - stretch * train.darkBefore(pulse) < 0;
  }

  /** How long a blink is noted to last; NaN if the sheet does not say. */
  private double lasts(Train train, int pulse, double stretch, Stream lamp) {
    double error = watching.noise().lengthSd(0) * lamp.normal();
    return Math.max(stretch * train.length(pulse) + error, 0.01);
  }

  /** A blink, as much of it as lies in the window. */
  private static Evidence.Note cut(double on, double off, double from, double to) {
    return new Evidence.Note(Math.max(on, from), off > to ? to : off, on < from, off > to, 1);
  }

  private static Evidence.Note note(double on, double off) {
    return new Evidence.Note(on, off, false, false, 1);
  }

  /** A number of a row that fills 0 to 1 evenly: its digits read from behind, in a prime base. */
  private static double even(int number, int base) {
    double sum = 0;
    double place = 1.0 / base;
    for (int left = number + 1; left > 0; left /= base) {
      sum += left % base * place;
      place /= base;
    }
    return sum;
  }

  private static long mix(long value) {
    long mixed = value * GOLDEN;
    mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
    mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
    return mixed ^ (mixed >>> 31);
  }

  /** A row of numbers that follow each other without order. */
  private static final class Stream {
    private long state;

    Stream(long seed) {
      this.state = seed;
    }

    /** From 0 to below 1. */
    double next() {
      state++;
      return (mix(state) >>> 11) * 0x1.0p-53;
    }

    double exponential(double rate) {
      return -Math.log(1 - next()) / rate;
    }

    /** By the method of Box and Muller, 1958. */
    double normal() {
      double radius = Math.sqrt(-2 * Math.log(1 - next()));
      return radius * Math.cos(2 * Math.PI * next());
    }
  }
}
