package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Chance;

/**
 * What may be shown, and how often: the states of a sheet by their weights, rhythms that it does
 * not list, and blinks in no order.
 *
 * @param sheet the code sheet
 * @param unlisted the unlisted rhythms, each as likely; none are shown if it is empty
 * @param randomPerSecond the rates of random blinks, each as likely; none are shown if it is empty
 * @param unlistedShare probability of an unlisted rhythm, 0 to 1
 * @param randomShare probability of random blinks, 0 to 1
 */
public record Mix(
    CodeSheet sheet,
    List<Rhythm> unlisted,
    List<Double> randomPerSecond,
    double unlistedShare,
    double randomShare) {
  /** Keeps copies of the lists. */
  public Mix {
    unlisted = List.copyOf(unlisted);
    randomPerSecond = List.copyOf(randomPerSecond);
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
   * Draws what is shown.
   *
   * @param chance where numbers come from
   * @return one state, unlisted rhythm or random blinks
   */
  public Act draw(Chance chance) {
    List<Double> priors = new ArrayList<>();
    for (double prior : priors()) {
      priors.add(prior);
    }
    int states = sheet.states().size();
    int number = chance.pick(priors);
    if (number < states) {
      return Act.of(sheet.states().get(number));
    }
    return number == states
        ? Act.unlisted(unlisted.get(chance.below(unlisted.size())))
        : Act.random(randomPerSecond.get(chance.below(randomPerSecond.size())));
  }
}
