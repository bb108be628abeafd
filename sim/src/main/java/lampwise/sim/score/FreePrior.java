package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import lampwise.sim.Chance;

/**
 * Rhythms that no sheet lists, with the broad prior that the decoder documents. Half of them are
 * near the sheet's own states ({@link NearRhythms}), if it has such. The others are free: one group
 * of one to ten blinks (seven in ten; of a number as often as one over it), a fifth of the groups
 * of several on a beat of which one to four are left out; or two groups of one to five, not one and
 * one, each pair of numbers as likely, where both have several blinks half with one spacing for
 * both. One in twenty is a number of blinks that shows once. What cannot be, and what a listed
 * state shows, is left out of these, and the rest raised by that.
 */
final class FreePrior {
  private static final int MOST_BLINKS = 10;
  private static final int MOST_IN_GROUP = 5;
  private static final int MOST_LEFT_OUT = 4;

  /** The part of what is unlisted that is near the sheet's own states. */
  private static final double NEAR = 0.5;

  private static final double ONCE = 0.05;
  private static final double ONE_GROUP = 0.7;
  private static final double ON_BEAT = 0.2;

  /** Blinks of a cycle that lie as near as this are at the same place. */
  private static final double SAME_SECONDS = 0.02;

  private static final double SAME_FRACTION = 0.02;

  /** How many draws tell how much is left out. */
  private static final int DRAWS = 40_000;

  private final List<FreeForm> forms = new ArrayList<>();
  private final List<Double> shares = new ArrayList<>();
  private final List<Fold> listed;
  private final double logKept;

  /**
   * The prior beside a sheet.
   *
   * @param listed what its states show
   * @param near what is near them
   */
  FreePrior(List<Fold> listed, List<NearRhythms.Near> near) {
    this.listed = List.copyOf(listed);
    double sum = 0;
    for (int n = 1; n <= MOST_BLINKS; n++) {
      sum += 1.0 / n;
    }
    for (int n = 1; n <= MOST_BLINKS; n++) {
      double count = 1 / (n * sum);
      double group = (1 - ONCE) * ONE_GROUP * count;
      add(FreeForm.once(n), ONCE * count);
      add(FreeForm.even(n), n == 1 ? group : (1 - ON_BEAT) * group);
      for (int out = 1; n > 1 && out <= MOST_LEFT_OUT; out++) {
        add(FreeForm.onBeat(n, out), ON_BEAT * group / MOST_LEFT_OUT);
      }
    }
    double pair = (1 - ONCE) * (1 - ONE_GROUP) / (MOST_IN_GROUP * MOST_IN_GROUP - 1);
    for (int n = 1; n <= MOST_IN_GROUP; n++) {
      for (int m = n == 1 ? 2 : 1; m <= MOST_IN_GROUP; m++) {
        boolean several = n > 1 && m > 1;
        add(FreeForm.twoGroups(n, m, true), several ? pair / 2 : pair);
        if (several) {
          add(FreeForm.twoGroups(n, m, false), pair / 2);
        }
      }
    }
    Chance chance = Chance.of(DRAWS);
    int kept = 0;
    for (int i = 0; i < DRAWS; i++) {
      FreeForm form = forms.get(chance.pick(shares));
      kept += isKept(form, form.draw(1, chance)) ? 1 : 0;
    }
    double free = near.isEmpty() ? 1 : 1 - NEAR;
    shares.replaceAll(share -> share * free);
    near.forEach(one -> add(FreeForm.known(one.fold()), NEAR * one.share()));
    this.logKept = Math.log((double) kept / DRAWS);
  }

  private FreePrior(List<FreeForm> forms, double[] shares) {
    this.forms.addAll(forms);
    for (double share : shares) {
      this.shares.add(share);
    }
    this.listed = List.of();
    this.logKept = 0;
  }

  /** A prior of other forms, beside no sheet; the shares sum to 1. */
  static FreePrior of(List<FreeForm> forms, double... shares) {
    return new FreePrior(forms, shares);
  }

  private void add(FreeForm form, double share) {
    forms.add(form);
    shares.add(share);
  }

  /** The forms. */
  List<FreeForm> forms() {
    return forms;
  }

  /** How common a form is. */
  double share(int form) {
    return shares.get(form);
  }

  /** A form, drawn by how common it is. */
  int pick(Chance chance) {
    return chance.pick(shares);
  }

  /** Whether a point is kept; one that cannot be is empty. */
  private boolean isKept(FreeForm form, double[] point) {
    return point.length > 0 && !isListed(form, point);
  }

  /** Logarithm of the prior density at a point of a form, the form's own share included. */
  double logPrior(int form, double[] point, double window) {
    FreeForm of = forms.get(form);
    double log = of.logPrior(point, window) + Math.log(shares.get(form));
    if (of.isKnown() || Double.isInfinite(log)) {
      return log;
    }
    return isListed(of, point) ? Double.NEGATIVE_INFINITY : log - logKept;
  }

  /** Whether a listed state shows the same, its clock or range of rates included. */
  private boolean isListed(FreeForm form, double[] point) {
    if (!form.repeats()) {
      return false;
    }
    for (Fold fold : listed) {
      double ratio = form.cycle(point) / fold.cycle();
      if (fold.blinks() == form.blinks()
          && ratio >= fold.stretch().least()
          && ratio <= fold.stretch().most()
          && isListed(form, point, fold, ratio)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isListed(FreeForm form, double[] point, Fold fold, double ratio) {
    for (int i = 1; i < fold.blinks(); i++) {
      double on = fold.on(i) - fold.on(0);
      if (Math.abs(form.on(point, i) / ratio - on) > SAME_SECONDS + SAME_FRACTION * on) {
        return false;
      }
    }
    return true;
  }
}
