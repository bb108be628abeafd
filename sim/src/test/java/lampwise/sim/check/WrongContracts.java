package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** Decoders that are wrong in one way each, under the contract. */
final class WrongContracts {
  private WrongContracts() {}

  /** Nothing is wrong with it. */
  static final class Sound implements DecoderContract {
    @Override
    public Decoder decoder() {
      return new SoundDecoder();
    }
  }

  /** Looks at the first recording before it asks whether there is one. */
  static final class Throws implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        recordings.get(0);
        return sound(sheet, recordings);
      };
    }
  }

  /** Probabilities that sum to a little more than 1. */
  static final class Overfull implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) ->
          weighed(sound(sheet, recordings), c -> Math.min(1, c.probability() + 1e-6));
    }
  }

  /** Tires with its third call. */
  static final class Tires implements DecoderContract {
    @Override
    public Decoder decoder() {
      return new Decoder() {
        private int calls;

        @Override
        public Reading decode(CodeSheet sheet, List<Recording> recordings) {
          return ++calls > 2 ? SoundDecoder.unreadable() : sound(sheet, recordings);
        }
      };
    }
  }

  /** Takes it that no time is below zero. */
  static final class FromZero implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) ->
          recordings.stream()
                  .flatMap(recording -> recording.window().stream())
                  .anyMatch(window -> window.fromSeconds() < 0)
              ? SoundDecoder.unreadable()
              : sound(sheet, recordings);
    }
  }

  /** Favours the state that stands first. */
  static final class FirstComes implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        String first = sheet.states().get(0).name();
        return weighed(
            sound(sheet, recordings),
            c -> 0.99 * c.probability() + (c.state().equals(first) ? 0.01 : 0));
      };
    }
  }

  /** Calls unlisted what it could not read. */
  static final class Decides implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        Reading reading = sound(sheet, recordings);
        return reading.candidates().isEmpty()
            ? SoundDecoder.answer(
                new Verdict.Unlisted(Optional.empty(), List.of()),
                SoundDecoder.ofWeights(sheet).candidates())
            : reading;
      };
    }
  }

  /** Never commits itself. */
  static final class Shy implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        Reading reading = sound(sheet, recordings);
        return Readings.decoded(reading).isPresent()
            ? SoundDecoder.undecided(reading.candidates())
            : reading;
      };
    }
  }

  /** Takes a clock tolerance of more than 6 % for a misprint of 2 %. */
  static final class StrictClock implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) ->
          sound(
              SheetArbitraries.sheet(
                  sheet.clockTolerance() > 0.06 ? 0.02 : sheet.clockTolerance(),
                  sheet.blinkSeconds(),
                  sheet.states()),
              recordings);
    }
  }

  /**
   * Knows patterns by their proportions: what it cannot decode it tries at a third and threefold.
   */
  static final class Proportions implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        Reading reading = sound(sheet, recordings);
        for (double factor : new double[] {3, 1 / 3.0}) {
          if (Readings.decoded(reading).isEmpty()
              && recordings.size() == 1
              && recordings.get(0) instanceof BlinkLog log
              && log.marks().window().isPresent()) {
            Reading scaled = sound(sheet, List.of(scaled(log, factor)));
            reading = Readings.decoded(scaled).isPresent() ? scaled : reading;
          }
        }
        return reading;
      };
    }

    private static BlinkLog scaled(BlinkLog log, double factor) {
      Window window = log.marks().window().orElseThrow();
      double zero = window.fromSeconds();
      Marks marks = log.marks().withWindow(new Window(0, factor * window.lengthSeconds()));
      return new BlinkLog(
          log.origin(),
          marks,
          log.blinks().stream()
              .map(
                  b -> new Blink((b.onSeconds() - zero) * factor, (b.offSeconds() - zero) * factor))
              .toList());
    }
  }

  /** Loses trust in what takes long. */
  static final class Impatient implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        Reading reading = sound(sheet, recordings);
        int count = reading.candidates().size();
        return recordings.stream().anyMatch(recording -> SoundDecoder.seconds(recording) > 35)
            ? weighed(reading, c -> 0.7 * c.probability() + 0.3 / count)
            : reading;
      };
    }
  }

  /** Believes in a state of great weight whatever it sees. */
  static final class Believes implements DecoderContract {
    @Override
    public Decoder decoder() {
      return (sheet, recordings) -> {
        Reading reading = sound(sheet, recordings);
        for (LampState state : sheet.states()) {
          if (state.weight() > 100 && !reading.candidates().isEmpty()) {
            Window stretch = new Window(0, 0);
            return SoundDecoder.answer(
                new Verdict.Decoded(state.name(), 0.99, stretch), reading.candidates());
          }
        }
        return reading;
      };
    }
  }

  private static Reading sound(CodeSheet sheet, List<Recording> recordings) {
    return new SoundDecoder().decode(sheet, recordings);
  }

  /** The same verdict with other probabilities. */
  private static Reading weighed(Reading reading, ToDoubleFunction<Candidate> probability) {
    List<Candidate> all = new ArrayList<>();
    for (Candidate c : reading.candidates()) {
      all.add(new Candidate(c.state(), c.prior(), c.logLikelihood(), probability.applyAsDouble(c)));
    }
    return SoundDecoder.answer(reading.verdict(), all);
  }
}
