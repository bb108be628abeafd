package lampwise.service;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the causes' probabilities are after all that happened during a visit. */
final class Weighing {
  /**
   * The share of an answer that may be a slip: so much of it is spread evenly over all answers, so
   * that no cause is ever lost to one finding. Chosen, no source.
   */
  static final double SLIP = 0.02;

  /** The least a reading of the lamp leaves of a cause, beside the cause that it suits best. */
  private static final double LEAST_LEFT = 0.01;

  private Weighing() {}

  /** The causes' probabilities, in the guide's order; they sum to 1. */
  static Map<Cause, Double> of(Guide guide, Situation situation, List<Act> acts) {
    List<Cause> causes = guide.causes(situation.kind(), situation.power(), situation.complaint());
    double[] weights = new double[causes.size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = causes.get(i).share(situation.complaint(), situation.recent());
    }
    for (Act act : counting(acts)) {
      if (act instanceof Act.Found found) {
        Check check = guide.check(found.finding().check()).orElseThrow();
        int answer = number(check, found.finding().answer());
        for (int i = 0; i < weights.length; i++) {
          weights[i] *= chance(check, answer, causes.get(i));
        }
      } else if (act instanceof Act.Tried tried) {
        Remedy remedy = guide.remedy(tried.remedy()).orElseThrow();
        for (int i = 0; i < weights.length; i++) {
          double fix = remedy.fixes().getOrDefault(causes.get(i).id(), 0.0);
          weights[i] *= tried.worked() ? Math.max(fix, SLIP) : 1 - Math.min(fix, 1 - SLIP);
        }
      } else if (act instanceof Act.Lamp lamp) {
        weigh(guide, causes, lamp.said(), weights);
      }
      normalise(weights);
    }
    normalise(weights);
    Map<Cause, Double> result = new LinkedHashMap<>();
    for (int i = 0; i < weights.length; i++) {
      result.put(causes.get(i), weights[i]);
    }
    return Collections.unmodifiableMap(result);
  }

  /** The chance of an answer under a cause, slips included; over 0, and sums to 1 over answers. */
  static double chance(Check check, int answer, Cause cause) {
    return (1 - SLIP) * check.chances(cause.id()).get(answer) + SLIP / check.answers().size();
  }

  static int number(Check check, String answer) {
    for (int i = 0; i < check.answers().size(); i++) {
      if (check.answers().get(i).word().equals(answer)) {
        return i;
      }
    }
    throw new GuideException("the check " + check.id() + " has no answer " + answer);
  }

  /**
   * The acts that tell something of the cause. An answer given again before anything was tried
   * corrects the first; after a remedy it tells of the remedy, and the first one stands.
   */
  private static List<Act> counting(List<Act> acts) {
    List<Act> counting = new ArrayList<>();
    int lastTried = -1;
    for (Act act : acts) {
      if (act instanceof Act.Found found) {
        int before = indexOf(counting, found.finding().check());
        if (before < 0) {
          counting.add(act);
        } else if (before > lastTried) {
          counting.set(before, act);
        }
      } else {
        counting.add(act);
        if (act instanceof Act.Tried) {
          lastTried = counting.size() - 1;
        }
      }
    }
    return counting;
  }

  private static int indexOf(List<Act> acts, String check) {
    for (int i = 0; i < acts.size(); i++) {
      if (acts.get(i) instanceof Act.Found found && found.finding().check().equals(check)) {
        return i;
      }
    }
    return -1;
  }

  private static void weigh(Guide guide, List<Cause> causes, LampSaid said, double[] weights) {
    double[] likelihoods = new double[weights.length];
    double most = 0;
    for (int i = 0; i < weights.length; i++) {
      likelihoods[i] = said.likelihood(guide, causes.get(i));
      most = Math.max(most, likelihoods[i]);
    }
    if (most > 0) {
      for (int i = 0; i < weights.length; i++) {
        weights[i] *= Math.max(likelihoods[i] / most, LEAST_LEFT);
      }
    }
  }

  private static void normalise(double[] weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    if (sum > 0) {
      for (int i = 0; i < weights.length; i++) {
        weights[i] /= sum;
      }
    }
  }
}
