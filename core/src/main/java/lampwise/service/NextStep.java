package lampwise.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Chooses the next step by expected minutes, and says why. */
final class NextStep {
  private final Guide guide;
  private final Situation situation;
  private final Map<Cause, Double> causes;
  private final OpenWork work;
  private final List<Planner.Choice> choices;
  private final boolean bowlIsUnknown;

  NextStep(Guide guide, Situation situation, Progress progress, Map<Cause, Double> causes) {
    this.guide = guide;
    this.situation = situation;
    this.causes = causes;
    work = new OpenWork(guide, situation, progress);
    bowlIsUnknown =
        guide.checks().stream().anyMatch(check -> check.bowlLook() && progress.wasSkipped(check));
    Problem problem = work.problem(causes);
    double[] weights = causes.values().stream().mapToDouble(Double::doubleValue).toArray();
    choices = new Planner(problem).all(Belief.start(weights));
  }

  Step step() {
    Planner.Choice best = choices.get(0);
    return switch (best.act()) {
      case CHECK -> look(work.checks().get(best.number()), best.cost());
      case REPAIR -> mend(work.remedies().get(best.number()), best.cost());
      case HAND_OVER -> handOver(best.cost());
    };
  }

  private Step look(Check check, double minutes) {
    Optional<Check> needed = work.firstNeeded(check.before());
    if (needed.isPresent()) {
      return before(needed.get(), "\"" + check.question() + "\"", minutes);
    }
    double without = otherwise(Planner.Act.CHECK);
    String why =
        capital(likeliest())
            + "; this takes "
            + minutes(check.minutes())
            + " and leaves "
            + minutes(minutes)
            + " expected to a working fixture"
            + (without < Double.MAX_VALUE && !minutes(without).equals(minutes(minutes))
                ? ", " + minutes(without) + " without asking."
                : ".");
    return new Step.Look(check, minutes, why);
  }

  private Step before(Check needed, String what, double minutes) {
    return new Step.Look(
        needed,
        minutes,
        "It must be known before "
            + what
            + "; "
            + likeliest()
            + ", "
            + minutes(minutes)
            + " expected to a working fixture.");
  }

  private Step mend(Remedy remedy, double minutes) {
    String why =
        "It has a chance of "
            + percent(chance(remedy))
            + " and takes "
            + minutes(work.minutes(remedy))
            + "; "
            + likeliest()
            + "; "
            + minutes(minutes)
            + " expected to a working fixture"
            + compared(minutes);
    if (work.isForOthers(remedy)) {
      return new Step.HandOver(remedy.who(), Optional.of(remedy), minutes, why);
    }
    Optional<Check> needed = work.firstNeeded(remedy.before());
    if (needed.isPresent()) {
      return before(needed.get(), "\"" + remedy.name() + "\"", minutes);
    }
    return new Step.Mend(remedy, situation.missing(remedy), minutes, why);
  }

  private String compared(double minutes) {
    double other = otherwise(Planner.Act.REPAIR);
    return other < Double.MAX_VALUE && !minutes(other).equals(minutes(minutes))
        ? ", " + minutes(other) + " by asking first or handing over."
        : ".";
  }

  private Step handOver(double minutes) {
    double other = otherwise(Planner.Act.HAND_OVER);
    String why =
        capital(likeliest())
            + "; handing over takes "
            + minutes(minutes)
            + (other < Double.MAX_VALUE
                ? ", going on " + minutes(other)
                : ", and nothing else can be done here")
            + (bowlIsUnknown ? "; nothing may flush before the bowl was looked at." : ".");
    return new Step.HandOver(likeliestOther(), Optional.empty(), minutes, why);
  }

  /** The best of the choices that are something else. */
  private double otherwise(Planner.Act act) {
    return choices.stream()
        .filter(choice -> choice.act() != act)
        .mapToDouble(Planner.Choice::cost)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private double chance(Remedy remedy) {
    double chance = 0;
    for (Map.Entry<Cause, Double> cause : causes.entrySet()) {
      chance += cause.getValue() * remedy.fixes().getOrDefault(cause.getKey().id(), 0.0);
    }
    return chance;
  }

  /** Who has the most to mend of what is left, of those that are not here; else a plumber. */
  private Who likeliestOther() {
    Map<Who, Double> chances = new EnumMap<>(Who.class);
    for (Remedy remedy : guide.remedies()) {
      if (remedy.fits(situation.kind(), situation.power()) && work.isForOthers(remedy)) {
        chances.merge(remedy.who(), chance(remedy), Double::sum);
      }
    }
    return chances.entrySet().stream()
        .filter(entry -> entry.getValue() > 0)
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse(Who.PLUMBER);
  }

  /** The likeliest causes, two at the most, with their chances. */
  private String likeliest() {
    List<Map.Entry<Cause, Double>> sorted = new ArrayList<>(causes.entrySet());
    sorted.sort(Comparator.comparingDouble((Map.Entry<Cause, Double> entry) -> -entry.getValue()));
    StringBuilder text = new StringBuilder("likeliest are ");
    for (int i = 0; i < Math.min(2, sorted.size()); i++) {
      text.append(i == 0 ? "" : " and ")
          .append('"')
          .append(sorted.get(i).getKey().name())
          .append("\" (")
          .append(percent(sorted.get(i).getValue()))
          .append(')');
    }
    return text.toString();
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private static String percent(double chance) {
    return chance < 0.01 ? "under 1 %" : String.format(Locale.ROOT, "%.0f %%", 100 * chance);
  }

  private static String minutes(double minutes) {
    return String.format(Locale.ROOT, minutes < 10 ? "%.1f min" : "%.0f min", minutes);
  }
}
