package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwise.light.Window;

/** The light of the room during one recording; times are counted from the window's start. */
final class Surroundings {
  private static final double REFERENCE_SECONDS = 90;
  private static final double SHORTEST_SHADOW_SECONDS = 0.8;
  private static final double LONGEST_SHADOW_SECONDS = 4;
  private static final double LEAST_SHADOW = 0.1;
  private static final double MOST_SHADOW = 0.4;
  private static final double SHORTEST_EDGE_SECONDS = 0.1;
  private static final double LONGEST_EDGE_SECONDS = 0.3;
  private static final double LEAST_LEFT = 0.05;
  private static final double MOST_LEFT = 0.5;
  private static final double SHORTEST_SWITCH_SECONDS = 0.02;
  private static final double LONGEST_SWITCH_SECONDS = 0.1;

  private final double length;
  private final double room;
  private final Slopes.Builder ramps;
  private final List<Window> hidden = new ArrayList<>();
  private final List<Double> rises = new ArrayList<>();
  private final Drift drift;
  private final double flickerHz;
  private final double flickerPhase;
  private final double flickerLux;

  private double switchAt = Double.POSITIVE_INFINITY;
  private double roomBefore;
  private double roomAfter;
  private final Slopes slopes;

  Surroundings(Map<String, Double> settings, double lengthSeconds, Chance chance) {
    length = lengthSeconds;
    room = SensorSetting.ROOM_LUX.in(settings);
    ramps = new Slopes.Builder(room);
    roomBefore = room;
    roomAfter = room;
    double step = SensorSetting.STEP_LUX.in(settings);
    switched(SensorSetting.ROOM_SWITCH.in(settings), step, chance.branch("room-switch"));
    shadows(SensorSetting.SHADOWS.in(settings), false, step, chance.branch("shadows"));
    shadows(SensorSetting.HANDS.in(settings), true, step, chance.branch("hands"));
    rises.sort(null);
    slopes = ramps.build();
    drift = new Drift(SensorSetting.DRIFT_LUX.in(settings), chance.branch("drift"));
    Chance mains = chance.branch("flicker");
    double off = SensorSetting.FLICKER_OFF_HZ.in(settings);
    flickerHz = SensorSetting.FLICKER_HZ.in(settings) + mains.uniform(-off, off);
    flickerPhase = mains.uniform();
    flickerLux =
        SensorSetting.FLICKER_LUX.in(settings)
            * Turns.averaged(flickerHz * SensorSetting.AVERAGING_S.in(settings));
  }

  /** The light is switched once, on or off, and what is left without it is a share of the room. */
  private void switched(double probability, double step, Chance chance) {
    if (!chance.happens(probability)) {
      return;
    }
    double dim = room * chance.uniform(LEAST_LEFT, MOST_LEFT);
    double edge = chance.uniform(SHORTEST_SWITCH_SECONDS, LONGEST_SWITCH_SECONDS);
    switchAt = chance.uniform(0, length);
    boolean on = chance.happens(0.5);
    if (on) {
      roomBefore = dim;
      ramps.lift(dim - room);
      rising(switchAt, room - dim, step);
    } else {
      roomAfter = dim;
    }
    ramps.ramp(switchAt, switchAt + edge, on ? room - dim : dim - room);
  }

  private void shadows(double meanCount, boolean hide, double step, Chance chance) {
    if (meanCount == 0) {
      return;
    }
    double perSecond = meanCount / REFERENCE_SECONDS;
    double at = -LONGEST_SHADOW_SECONDS + chance.waiting(perSecond);
    while (at < length) {
      double end = at + chance.uniform(SHORTEST_SHADOW_SECONDS, LONGEST_SHADOW_SECONDS);
      double depth = chance.uniform(LEAST_SHADOW, MOST_SHADOW);
      double in = chance.uniform(SHORTEST_EDGE_SECONDS, LONGEST_EDGE_SECONDS);
      double out = chance.uniform(SHORTEST_EDGE_SECONDS, LONGEST_EDGE_SECONDS);
      if (end > 0) {
        double lux = depth * (at < switchAt ? roomBefore : roomAfter);
        ramps.ramp(at, at + in, -lux).ramp(end - out, end, lux);
        rising(end - out, lux, step);
        if (hide) {
          hidden.add(new Window(at, end));
        }
      }
      at += chance.waiting(perSecond);
    }
  }

  private void rising(double at, double lux, double step) {
    if (lux >= step && at >= 0 && at <= length) {
      rises.add(at);
    }
  }

  /** When a hand hides the lamp, in order of starts. */
  List<Window> hidden() {
    return hidden;
  }

  /** When the level begins to rise without the lamp, in order. */
  List<Double> rises() {
    return rises;
  }

  /** The mean level of the room between two times, which must not go back from call to call. */
  double mean(double from, double to) {
    double level = slopes.mean(from, to);
    double middle = (from + to) / 2;
    if (flickerLux != 0) {
      double share = room > 0 ? Math.max(0, level / room) : 1;
      level += share * flickerLux * Turns.sine(flickerHz * middle + flickerPhase);
    }
    return level + drift.at(middle);
  }
}
