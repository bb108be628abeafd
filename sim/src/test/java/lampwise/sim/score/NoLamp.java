package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;

/**
 * Light curves in which no lamp blinks, though much else happens: for each kind and number the same
 * curve every time.
 */
enum NoLamp {
  /** Gaussian noise at 50 samples a second. */
  NOISE(50) {
    @Override
    double level(double t, Things things) {
      return 150;
    }
  },
  /** Whole lux, written on change, ten samples a second. */
  ROUNDED(10) {
    @Override
    double level(double t, Things things) {
      return Math.rint(200 + 2 * Math.sin(t / 40));
    }
  },
  /** Noise with rare, far outliers (Cauchy). */
  OUTLIERS(20) {
    @Override
    double level(double t, Things things) {
      return 150 + 0.2 * Math.tan(Math.PI * (things.chance.nextDouble() - 0.5));
    }
  },
  /** Noise that wanders (a random walk that is drawn back). */
  WANDERING(20) {
    @Override
    double level(double t, Things things) {
      things.walk = 0.995 * things.walk + 0.4 * things.chance.nextGaussian();
      return 180 + things.walk;
    }
  },
  /** Mains flicker of 100 or 120 Hz seen too seldom: a slow beat of some hertz or less. */
  BEAT(10) {
    @Override
    double level(double t, Things things) {
      return 200 + 8 * Math.sin(2 * Math.PI * things.first * t);
    }
  },
  /** A room light is switched every so often. */
  ROOM_LIGHT(10) {
    @Override
    double level(double t, Things things) {
      int switched = 0;
      for (double at : things.times) {
        switched += at <= t ? 1 : 0;
      }
      return 120 + 60 * (switched % 2);
    }
  },
  /** Somebody waves: shadows of half a second to two, deep and soft. */
  HANDS(20) {
    @Override
    double level(double t, Things things) {
      double level = 200;
      for (double at : things.times) {
        double into = (t - at) / (0.5 + 1.5 * things.second);
        if (into > 0 && into < 1) {
          level *= 1 - 0.5 * Math.sin(Math.PI * into);
        }
      }
      return level;
    }
  },
  /** The sun sets, with clouds. */
  SUNSET(5) {
    @Override
    double level(double t, Things things) {
      return 400 * Math.exp(-t / 60) + 30 * Math.sin(2 * Math.PI * t / (20 + 30 * things.second));
    }
  };

  private static final double SECONDS = 60;

  private final double rate;

  NoLamp(double rate) {
    this.rate = rate;
  }

  /** The level without noise. */
  abstract double level(double t, Things things);

  /** What is drawn for a curve. */
  static final class Things {
    private final SplittableRandom chance;
    private final double first;
    private final double second;
    private final List<Double> times = new ArrayList<>();
    private double walk;

    Things(long seed) {
      chance = new SplittableRandom(seed);
      first = 0.05 + 2 * chance.nextDouble();
      second = chance.nextDouble();
      for (double at = 6 * chance.nextDouble(); at < SECONDS; at += 2 + 10 * chance.nextDouble()) {
        times.add(at);
      }
    }
  }

  /** The curve of a number. */
  LightCurve curve(int number) {
    Things things = new Things(1_000_003L * ordinal() + number);
    int size = (int) (SECONDS * rate);
    double[] seconds = new double[size];
    double[] levels = new double[size];
    double noise = this == ROUNDED ? 0.4 : 1.5;
    for (int i = 0; i < size; i++) {
      seconds[i] = (i + 0.2 * (things.chance.nextDouble() - 0.5)) / rate;
      double noisy = level(seconds[i], things) + noise * things.chance.nextGaussian();
      levels[i] = this == ROUNDED ? Math.rint(noisy) : Math.rint(10 * noisy) / 10;
    }
    seconds[0] = 0;
    return LightCurve.of(
        new Origin(name(), Optional.empty(), List.of()),
        Marks.watched(0, SECONDS).withTargets(Targets.likely()),
        LightCurve.Lit.BRIGHTER,
        seconds,
        levels);
  }
}
