package lampwise.service;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.decode.Reading;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * A visit from the complaint to its close: how probable each cause is after all that happened, and
 * what to do next. A value: each act gives a new one.
 *
 * <p>One cause at a time is assumed, {@link Guide#OTHER} standing for all that the guide does not
 * list. Making safe comes before any cost; then what the guide asks first; then the check, the
 * remedy or the handing over with the lowest expected minutes to a working fixture. Nothing flushes
 * before the bowl was looked at, as each part of the guide says what it waits for.
 */
public final class Diagnosis {
  /** Dangers that others must have dealt with before anything goes on, and who they are. */
  private static final Map<String, Who> ENDS_THE_WORK =
      Map.of("wet-electrics", Who.ELECTRICIAN, "sewage", Who.PLUMBER);

  private final Guide guide;
  private final Situation situation;
  private final List<Act> acts;

  private Diagnosis(Guide guide, Situation situation, List<Act> acts) {
    this.guide = guide;
    this.situation = situation;
    this.acts = List.copyOf(acts);
  }

  /**
   * The start of a visit by a technician with every part at hand.
   *
   * @param guide the guide
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @param complaint what is said to be wrong
   * @param recent what was worked on lately
   * @return the visit
   * @throws GuideException if the guide has no cause for such a complaint
   */
  public static Diagnosis start(
      Guide guide, FixtureKind kind, Optional<Power> power, Complaint complaint, Work... recent) {
    return start(
        guide,
        new Situation(
            kind, power, complaint, Arrays.asList(recent), Optional.empty(), Situation.TECHNICIAN));
  }

  /**
   * The start of a visit.
   *
   * @param guide the guide
   * @param situation what it starts from
   * @return the visit
   * @throws GuideException if the guide has no cause for such a complaint
   */
  public static Diagnosis start(Guide guide, Situation situation) {
    Rules.that(
        guide.causes(situation.kind(), situation.power(), situation.complaint()).stream()
            .anyMatch(cause -> !cause.id().equals(Guide.OTHER)),
        "the guide has no cause for the complaint "
            + situation.complaint().word()
            + " of a "
            + situation.kind().word());
    return new Diagnosis(guide, situation, List.of());
  }

  private Diagnosis and(Act act) {
    List<Act> more = new ArrayList<>(acts);
    more.add(act);
    return new Diagnosis(guide, situation, more);
  }

  /**
   * The visit after an act.
   *
   * @param act what happened
   * @return the visit
   * @throws GuideException if it names a check, an answer, a rule or a remedy that is not there or
   *     is not for this fixture
   */
  public Diagnosis with(Act act) {
    if (act instanceof Act.Found found) {
      Check check = checkOf(found.finding().check());
      if (check.answer(found.finding().answer()).isEmpty()) {
        throw new GuideException(
            "the check " + check.id() + " has no answer " + found.finding().answer());
      }
    } else if (act instanceof Act.Skipped skipped) {
      checkOf(skipped.check());
    } else if (act instanceof Act.Secured secured) {
      Rules.that(
          guide.makeSafe().stream().anyMatch(rule -> rule.id().equals(secured.rule())),
          "the guide has no rule to make safe " + secured.rule());
    } else if (act instanceof Act.Tried tried) {
      Rules.that(
          guide.remedy(tried.remedy()).isPresent(), "the guide has no remedy " + tried.remedy());
    }
    return and(act);
  }

  private Check checkOf(String id) {
    Check check = guide.check(id).orElse(null);
    if (check == null) {
      throw new GuideException("the guide has no check " + id);
    }
    Rules.that(
        Rules.fits(check.kinds(), check.powers(), situation.kind(), situation.power()),
        "the check " + id + " is not for this kind of fixture or power");
    return check;
  }

  /**
   * The visit after a check.
   *
   * @param finding what it showed
   * @return the visit
   * @throws GuideException if there is no such check or answer
   */
  public Diagnosis with(Finding finding) {
    return with(new Act.Found(finding));
  }

  /**
   * The visit after the lamp was read.
   *
   * @param sheet the sheet that was decoded against
   * @param reading the reading
   * @return the visit
   */
  public Diagnosis with(CodeSheet sheet, Reading reading) {
    return with(sheet, reading, List.of());
  }

  /**
   * The visit after the lamp was read.
   *
   * @param sheet the sheet that was decoded against
   * @param reading the reading
   * @param recordings the names of what was read; may be empty
   * @return the visit
   */
  public Diagnosis with(CodeSheet sheet, Reading reading, List<String> recordings) {
    return with(
        new Act.Lamp(LampSaid.of(sheet, reading), Visit.Lamp.of(sheet, reading, recordings)));
  }

  /**
   * The guide.
   *
   * @return the guide as it was given
   */
  public Guide guide() {
    return guide;
  }

  /**
   * What the visit started from.
   *
   * @return the situation as it was given
   */
  public Situation situation() {
    return situation;
  }

  /**
   * What happened so far.
   *
   * @return the acts in order
   */
  public List<Act> acts() {
    return acts;
  }

  /**
   * Whether the lamp was read against an invented sheet, so that all this is for trying only.
   *
   * @return true if a reading in it rests on one
   */
  public boolean isInvented() {
    return acts.stream().anyMatch(act -> act instanceof Act.Lamp lamp && lamp.said().invented());
  }

  /**
   * What the lamp said, by its last reading.
   *
   * @return the recordings and what was decoded; {@link Visit.Lamp#unseen()} without a reading
   */
  public Visit.Lamp lamp() {
    Visit.Lamp lamp = Visit.Lamp.unseen();
    for (Act act : acts) {
      lamp = act instanceof Act.Lamp read ? read.seen() : lamp;
    }
    return lamp;
  }

  /**
   * The row of the visit log that this visit stands in.
   *
   * @return the number of the first row that was written for it; empty if none was
   */
  public OptionalInt loggedRow() {
    return acts.stream()
        .filter(Act.Logged.class::isInstance)
        .mapToInt(act -> ((Act.Logged) act).row())
        .findFirst();
  }

  /**
   * The cause, once one is likelier than all others together.
   *
   * @return the cause; empty while none is, or if it is {@link Guide#OTHER}
   */
  public Optional<Cause> settled() {
    return causes().entrySet().stream()
        .findFirst()
        .filter(entry -> entry.getValue() > 0.5 && !entry.getKey().id().equals(Guide.OTHER))
        .map(Map.Entry::getKey);
  }

  /**
   * How probable each cause is now.
   *
   * @return the causes that can be behind the complaint, likeliest first; the values sum to 1 and
   *     none is 0
   */
  public Map<Cause, Double> causes() {
    Map<Cause, Double> sorted = new LinkedHashMap<>();
    weights().entrySet().stream()
        .sorted(Comparator.comparingDouble((Map.Entry<Cause, Double> entry) -> -entry.getValue()))
        .forEach(entry -> sorted.put(entry.getKey(), entry.getValue()));
    return sorted;
  }

  Map<Cause, Double> weights() {
    return Weighing.of(guide, situation, acts);
  }

  Progress progress() {
    return new Progress(guide, situation, acts);
  }

  /**
   * What to do next.
   *
   * @return the step; after the last one a {@link Step.Close} again and again
   */
  public Step next() {
    Progress progress = progress();
    if (!progress.due().isEmpty()) {
      MakeSafe rule = progress.due().get(0);
      return new Step.Secure(rule, "Making safe comes before any question: " + rule.sign() + ".");
    }
    List<Act> done = acts.stream().filter(act -> !(act instanceof Act.Logged)).toList();
    Act last = done.isEmpty() ? null : done.get(done.size() - 1);
    if (last instanceof Act.Tried tried && tried.worked()) {
      return closed(progress, guide.remedy(tried.remedy()).orElseThrow());
    }
    if (last instanceof Act.Handed) {
      Outcome outcome = progress.wasSecured() ? Outcome.MADE_SAFE : Outcome.HANDED_OVER;
      return new Step.Close(
          outcome, endOf(progress, false), "It does not work yet; somebody else goes on.");
    }
    for (Act act : acts) {
      if (act instanceof Act.Secured secured && ENDS_THE_WORK.containsKey(secured.rule())) {
        Who who = ENDS_THE_WORK.getOrDefault(secured.rule(), Who.PLUMBER);
        return new Step.HandOver(
            who,
            Optional.empty(),
            guide.handOverMinutes(),
            "Nothing goes on here before the " + who.word() + " agrees.");
      }
    }
    for (Check check : guide.checks()) {
      if (check.first()
          && check.fits(situation.kind(), situation.power(), situation.complaint())
          && !progress.isAnswered(check)
          && !progress.wasSkipped(check)) {
        return new Step.Look(check, Double.NaN, "It is asked at every visit before all else.");
      }
    }
    return new NextStep(guide, situation, progress, weights()).step();
  }

  private Step closed(Progress progress, Remedy remedy) {
    Outcome outcome = remedy.watch() ? Outcome.RESET_WATCH : Outcome.FIXED;
    String why =
        remedy.watch()
            ? "It works again, but after this remedy the fault may come back within days."
            : "It works, and the checks of this remedy have proven it.";
    return new Step.Close(outcome, endOf(progress, true), why);
  }

  /** The closing lines; what proves that it works is left out where it does not. */
  private List<ClosingStep> endOf(Progress progress, boolean works) {
    return guide.closing().stream()
        .filter(line -> line.isDue(situation.kind(), progress.opened()))
        .filter(line -> works || line.kinds().isEmpty())
        .toList();
  }
}
