package lampwise.sim;

import java.util.List;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * What may be shown, and how often: the states of a sheet by their weights, rhythms that it does
 * not list, and blinks in no order. Figures refer to one.
 *
 * @param sheet the code sheet
 * @param unlisted the unlisted rhythms, each as likely; none are shown if it is empty
 * @param randomPerSecond the rates of random blinks, each as likely, each over 0 and at most 10;
 *     none are shown if it is empty
 * @param unlistedShare probability of an unlisted rhythm, 0 to 1
 * @param randomShare probability of random blinks, 0 to 1
 */
public record Mix(
    CodeSheet sheet,
    List<Rhythm> unlisted,
    List<Double> randomPerSecond,
    double unlistedShare,
    double randomShare) {
  /** How probable it usually is that a unit shows a rhythm which its sheet does not have. */
  public static final double UNLISTED_SHARE = 0.05;

  /** How probable it usually is that a unit shows blinks in no order. */
  public static final double RANDOM_SHARE = 0.01;

  /** The usual rates of blinks in no order: 0.2 to 1.5 a second, evenly by ratio. */
  private static final List<Double> USUAL_RATES = List.of(0.2, 0.28, 0.39, 0.55, 0.77, 1.07, 1.5);

  /**
   * Keeps copies of the lists.
   *
   * @throws SimulationException if the shares are no probabilities
   */
  public Mix {
    unlisted = List.copyOf(unlisted);
    randomPerSecond = List.copyOf(randomPerSecond);
    if (!(unlistedShare >= 0 && randomShare >= 0 && unlistedShare + randomShare <= 1)) {
      throw new SimulationException(
          "the shares of a mix must be 0 or more and sum to at most 1: "
              + unlistedShare
              + ", "
              + randomShare);
    }
  }

  /**
   * The usual mix: the sheet's states, {@value #UNLISTED_SHARE} of unlisted rhythms, {@value
   * #RANDOM_SHARE} of blinks in no order at 0.2 to 1.5 a second.
   *
   * @param sheet the sheet
   * @param unlisted the rhythms that it does not have; none are shown if it is empty
   * @return the mix
   */
  public static Mix usual(CodeSheet sheet, List<Rhythm> unlisted) {
    return new Mix(sheet, unlisted, USUAL_RATES, UNLISTED_SHARE, RANDOM_SHARE);
  }

  /**
   * The probability of each before anything is seen.
   *
   * @return probabilities of the sheet's states in its order, then of an unlisted rhythm, then of
   *     random blinks; they sum to 1
   */
  public double[] priors() {
    int states = sheet.states().size();
    double[] priors = new double[states + 2];
    priors[states] = unlisted.isEmpty() ? 0 : unlistedShare;
    priors[states + 1] = randomPerSecond.isEmpty() ? 0 : randomShare;
    double left = 1 - priors[states] - priors[states + 1];
    double weights = sheet.states().stream().mapToDouble(LampState::weight).sum();
    for (int i = 0; i < states; i++) {
      priors[i] = left * sheet.states().get(i).weight() / weights;
    }
    return priors;
  }

  /**
   * Draws a scene: random blinks, an unlisted rhythm, or a state so that it is {@linkplain
   * Scenes#showing seen}.
   *
   * @param seconds how long it is watched, from 0; over zero
   * @param chance where numbers come from
   * @return the scene
   * @throws SimulationException if the time is not over zero
   */
  public Scene draw(double seconds, Chance chance) {
    int states = sheet.states().size();
    double[] priors = priors();
    double which = chance.uniform();
    if (which < priors[states + 1]) {
      double rate = randomPerSecond.get(chance.below(randomPerSecond.size()));
      return Scene.of(sheet, Act.random(rate), seconds);
    }
    if (which < priors[states + 1] + priors[states]) {
      Rhythm rhythm = unlisted.get(chance.below(unlisted.size()));
      return Scene.of(sheet, Act.unlisted(rhythm), seconds);
    }
    int state = chance.pick(sheet.states().stream().map(LampState::weight).toList());
    return Scenes.showing(sheet, sheet.states().get(state), seconds, chance);
  }
}
