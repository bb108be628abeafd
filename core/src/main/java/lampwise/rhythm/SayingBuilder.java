package lampwise.rhythm;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Puts the items of a saying together to the rhythms that they can mean. */
final class SayingBuilder {
  /** A light of at least this length before what has its own cycle comes once (chosen). */
  private static final double ONCE_FROM_SECONDS = 2;

  /** A dark between several blinks that is longer than this lies between groups (chosen). */
  private static final double WITHIN_GROUP_SECONDS = 1;

  private final List<Part> prelude = new ArrayList<>();
  private final List<Part> parts = new ArrayList<>();
  private Optional<Rate> rate = Optional.empty();
  private Optional<Length> every = Optional.empty();
  private Optional<Length> between = Optional.empty();
  private boolean everyAttached;
  private boolean firstSaid;
  private boolean pauseSaid;
  private boolean lastNamed;
  private boolean repeats;
  private boolean once;

  boolean isEmpty() {
    return parts.isEmpty() && rate.isEmpty();
  }

  boolean endsWithBlinks() {
    return rate.isEmpty() && last().filter(part -> part instanceof Part.Blinks).isPresent();
  }

  private Optional<Part> last() {
    return parts.isEmpty() ? Optional.empty() : Optional.of(parts.get(parts.size() - 1));
  }

  void first() {
    firstSaid = true;
  }

  void pause() {
    pauseSaid = true;
  }

  void repeat() {
    repeats = true;
  }

  void once() {
    once = true;
  }

  void blinks(Count count, Size size) throws Fault {
    add(bare(count, size));
  }

  /** One blink that was named, not counted; named again without a pause it is of the same group. */
  void single(Size size) throws Fault {
    boolean again =
        lastNamed
            && !pauseSaid
            && last().orElse(null) instanceof Part.Blinks blinks
            && blinks.size() == size
            && blinks.count().max() < Count.MOST
            && blinks.equals(bare(blinks.count(), size));
    if (again) {
      int count = ((Part.Blinks) parts.remove(parts.size() - 1)).count().max();
      blinks(Count.of(count + 1), size);
    } else {
      blinks(Count.of(1), size);
    }
    lastNamed = true;
  }

  private static Part.Blinks bare(Count count, Size size) {
    return new Part.Blinks(count, size, Optional.empty(), Optional.empty());
  }

  void lit(Optional<Length> length) throws Fault {
    add(new Part.Lit(length));
  }

  void dark(Optional<Length> length) throws Fault {
    add(new Part.Unlit(length));
  }

  void rate(Rate said) throws Fault {
    if (rate.isPresent()) {
      rateNeedsTime();
    }
    rate = Optional.of(said);
    if (!parts.isEmpty()) {
      prelude.addAll(parts);
      parts.clear();
    }
  }

  private static void rateNeedsTime() throws Fault {
    throw new Fault(
        1,
        "how long it blinks at that rate is not said, as in \"twice a second for 20 s\"",
        "",
        "");
  }

  private void add(Part part) throws Fault {
    if (rate.isPresent()) {
      rateNeedsTime();
    }
    if (pauseSaid && !(part instanceof Part.Unlit) && last().filter(this::isSized).isPresent()) {
      parts.add(new Part.Unlit(Optional.empty()));
    }
    pauseSaid = false;
    lastNamed = false;
    parts.add(part);
  }

  /** Beside words of length {@code then} alone opens no group. */
  private boolean isSized(Part part) {
    return part instanceof Part.Blinks blinks && blinks.size() != Size.UNSAID;
  }

  void of(Length length) throws Fault {
    Part.Blinks blinks = lastBlinks();
    replaceLast(
        new Part.Blinks(blinks.count(), blinks.size(), Optional.of(length), blinks.apart()));
  }

  void apart(Length length) throws Fault {
    if (rate.filter(r -> r.form().inWords()).isPresent()) {
      rate = Optional.empty();
      blinks(Count.of(1), Size.UNSAID);
      every(length, true);
      return;
    }
    Part.Blinks blinks = lastBlinks();
    if (blinks.count().max() == 1) {
      every(length, true);
      return;
    }
    replaceLast(new Part.Blinks(blinks.count(), blinks.size(), blinks.of(), Optional.of(length)));
  }

  /** The dark between blinks, or between groups of them. */
  void between(Length length) throws Fault {
    if (rate.filter(r -> r.form().inWords()).isPresent()) {
      rate = Optional.empty();
      blinks(Count.of(1), Size.UNSAID);
    }
    if (lastBlinks().count().max() == 1) {
      add(new Part.Unlit(Optional.of(length)));
    } else {
      between = Optional.of(length);
    }
  }

  void every(Length cycle, boolean attached) throws Fault {
    if (rate.filter(r -> r.form().inWords()).isPresent()) {
      rate = Optional.empty();
      parts.addAll(prelude);
      prelude.clear();
      blinks(Count.of(1), Size.UNSAID);
    } else if (rate.isPresent()) {
      throw new Fault(1, "a rate and \"every\" do not go together", "", "");
    }
    if (every.isPresent()) {
      throw new Fault(1, "\"every\" stands twice", "", "");
    }
    every = Optional.of(cycle);
    everyAttached = attached;
  }

  void lasting(Length length) throws Fault {
    if (rate.isPresent()) {
      Part rated = new Part.RatedFor(rate.get(), length);
      rate = Optional.empty();
      parts.addAll(prelude);
      prelude.clear();
      parts.add(rated);
    } else if (last().orElse(null) instanceof Part.Lit lit && lit.length().isEmpty()) {
      replaceLast(new Part.Lit(Optional.of(length)));
    } else {
      of(length);
    }
  }

  /** All of it so many times, then dark. */
  void times(int number) throws Fault {
    List<Part> code = List.copyOf(parts);
    if (rate.isPresent() || code.isEmpty() || code.size() * number > Count.MOST) {
      throw new Fault(
          1, "what is sent so often is not said, as in \"4 flashes sent twice\"", "", "");
    }
    for (int i = 1; i < number; i++) {
      parts.addAll(code);
    }
    if (number > 1 && last().filter(part -> part instanceof Part.Unlit).isPresent()) {
      parts.remove(parts.size() - 1);
    }
    once = true;
  }

  private Part.Blinks lastBlinks() throws Fault {
    if (last().orElse(null) instanceof Part.Blinks blinks) {
      return blinks;
    }
    throw new Fault(1, "a time belongs to blinks, and none stand before it", "", "");
  }

  private void replaceLast(Part part) {
    parts.set(parts.size() - 1, part);
  }

  /** The rhythms that it can mean, the likeliest first. */
  List<Rhythm> rhythms() throws Fault {
    if (isEmpty() && prelude.isEmpty()) {
      throw new Fault(
          1, "nothing is said of the light; expected such as \"3 flashes every 7 s\"", "", "");
    }
    if (rate.isPresent()) {
      return checked(List.of(new Draft(prelude, new Cycle.Rated(rate.get()))));
    }
    dropDarkAtEnd();
    if (parts.size() == 1 && parts.get(0) instanceof Part.Unlit dark) {
      if (every.isEmpty() || dark.length().isEmpty()) {
        return List.of(new Rhythm.Dark());
      }
      // A lamp that goes off for a time is lit between.
      parts.add(0, new Part.Lit(Optional.empty()));
    }
    if (parts.size() == 1 && every.isEmpty()) {
      if (parts.get(0) instanceof Part.Lit lit && lit.length().isEmpty()) {
        return List.of(new Rhythm.Steady());
      }
      once |= !repeats && !(parts.get(0) instanceof Part.Blinks);
    }
    List<Draft> drafts = new ArrayList<>();
    Ending ending =
        every
            .<Ending>map(Ending.Every::new)
            .orElseGet(() -> once && !repeats ? new Ending.Once() : new Ending.Repeating());
    for (List<Part> spaced : spaced()) {
      drafts.addAll(split(spaced, ending));
    }
    return checked(drafts);
  }

  /** {@code Then dark} after what is not a lamp that is always lit ends it. */
  private void dropDarkAtEnd() {
    int size = parts.size();
    boolean open =
        size > 1 && parts.get(size - 1) instanceof Part.Unlit dark && dark.length().isEmpty();
    boolean afterSteady =
        size > 1 && parts.get(size - 2) instanceof Part.Lit lit && lit.length().isEmpty();
    if (open && !afterSteady && every.isEmpty()) {
      parts.remove(size - 1);
      once = true;
    }
  }

  /** The parts with what was said to lie between blinks, in each way that it can be meant. */
  private List<List<Part>> spaced() {
    if (between.isEmpty()) {
      return List.of(parts);
    }
    int at = parts.size() - 1;
    while (!(parts.get(at) instanceof Part.Blinks)) {
      at--;
    }
    Part.Blinks blinks = (Part.Blinks) parts.get(at);
    List<Part> groups = new ArrayList<>(parts);
    groups.add(at + 1, new Part.Unlit(between));
    if (blinks.count().min() != blinks.count().max()) {
      return List.of(groups);
    }
    List<Part> within = new ArrayList<>(parts);
    within.remove(at);
    Part one = new Part.Blinks(Count.of(1), blinks.size(), blinks.of(), Optional.empty());
    for (int i = 0; i < blinks.count().min(); i++) {
      if (i > 0) {
        within.add(at++, new Part.Unlit(between));
      }
      within.add(at++, one);
    }
    return between.get().fromSeconds() <= WITHIN_GROUP_SECONDS
        ? List.of(within, groups)
        : List.of(groups, within);
  }

  /** With and without a prelude where either can be meant. */
  private List<Draft> split(List<Part> all, Ending ending) {
    Draft whole = new Draft(prelude, new Cycle.Parts(all, ending));
    int last = all.size() - 1;
    boolean possible = last > 0 && every.isPresent() && everyAttached;
    if (!possible || all.get(last) instanceof Part.Unlit) {
      return List.of(whole);
    }
    List<Part> tail = List.of(all.get(last));
    Draft apart = new Draft(all.subList(0, last), new Cycle.Parts(tail, ending));
    if (firstSaid) {
      return List.of(apart);
    }
    boolean lit = last == 1 && all.get(0) instanceof Part.Lit;
    if (!lit) {
      return List.of(whole);
    }
    double seconds = ((Part.Lit) all.get(0)).length().map(Length::fromSeconds).orElse(0.0);
    return seconds >= ONCE_FROM_SECONDS ? List.of(apart, whole) : List.of(whole, apart);
  }

  private record Draft(List<Part> prelude, Cycle cycle) {}

  /** Those that mean something; the first one's fault if none does. */
  private static List<Rhythm> checked(List<Draft> drafts) throws Fault {
    Set<Rhythm> good = new LinkedHashSet<>();
    Optional<Fault> fault = Optional.empty();
    for (Draft draft : drafts) {
      Optional<Broken> broken = RhythmRules.find(draft.prelude(), draft.cycle());
      if (broken.isEmpty()) {
        good.add(new Rhythm.Blinking(draft.prelude(), draft.cycle()));
      } else if (!broken.get().better().isEmpty()) {
        good.add(PhraseParser.parse(broken.get().better()));
      } else if (fault.isEmpty()) {
        fault = Optional.of(new Fault(1, broken.get().reason(), "", ""));
      }
    }
    if (good.isEmpty()) {
      throw fault.orElseGet(() -> new Fault(1, "no rhythm says this", "", ""));
    }
    return List.copyOf(good);
  }
}
