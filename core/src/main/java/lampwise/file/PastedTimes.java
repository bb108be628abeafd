package lampwise.file;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import lampwise.file.PastedTime.Role;
import lampwise.file.PastedTime.Style;
import lampwise.file.ReadOptions.Shape;
import lampwise.file.TimeText.Writing;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Targets;
import lampwise.light.Window;

/** Reads blink logs from pasted times, gaps or pairs of on and off; one for each fixture named. */
final class PastedTimes {
  private final SourceText source;
  private final ReadOptions options;
  private final double perSecond;
  private final List<String> notes;

  private PastedTimes(SourceText source, ReadOptions options) {
    this.source = source;
    this.options = options;
    this.perSecond = options.unit().map(ReadOptions.Unit::perSecond).orElse(1.0);
    this.notes = new ArrayList<>(source.notes());
  }

  /**
   * Reads the logs.
   *
   * @param shape what the text holds: times, gaps or spans; words and signs in it say more
   * @return one log or more
   * @throws FileException if it is no such text
   * @throws OptionException if an option cannot be understood or does not fit
   */
  static List<Recording> read(SourceText source, Shape shape, ReadOptions options)
      throws FileException, OptionException {
    SourceText plain = PastedText.plain(source);
    List<PastedSection> sections = PastedSections.split(source, plain);
    boolean decimalComma = PastedCommas.areDecimal(plain, sections);
    List<Recording> logs = new ArrayList<>();
    int times = 0;
    for (PastedSection section : sections) {
      PastedScanner.Found found = PastedScanner.scan(plain, section, decimalComma);
      times += found.times().size();
      logs.add(new PastedTimes(plain, options).log(shape, section, found));
    }
    if (times == 0 && sections.get(0).fixture().isPresent()) {
      throw source.fault(0, 0, PastedScanner.NO_NUMBERS);
    }
    return logs;
  }

  private BlinkLog log(Shape shape, PastedSection section, PastedScanner.Found found)
      throws FileException, OptionException {
    notes.addAll(found.notes());
    List<PastedTime> written = columns(shape, found);
    List<PastedTime> times = roles(shape, written);
    double[] seconds = absolute(times);
    TimeOrder.Ordered ordered = TimeOrder.order(source, times, seconds);
    notes.addAll(ordered.notes());
    double zero = zero(ordered);
    List<Blink> blinks = blinks(ordered, zero);
    RecordingClock clock = clock(ordered, zero);
    Marks marks = MarkOptions.marks(options, clock, Targets.unknown());
    understood(blinks, written, section);
    List<Blink> inside = inside(blinks, marks.window());
    return new BlinkLog(new Origin(source.name(), section.fixture(), notes), marks, inside);
  }

  /** Says in one line what was understood, where that was more than plain seconds. */
  private void understood(List<Blink> blinks, List<PastedTime> written, PastedSection section) {
    boolean plain =
        written.stream()
            .allMatch(t -> t.time().writing() == Writing.NUMBER && t.style() == Style.BARE);
    if (written.isEmpty() && section.fixture().isPresent()) {
      notes.add("no times stand below the heading of line " + section.heading());
    }
    if (blinks.isEmpty() || (plain && notes.size() == source.notes().size())) {
      return;
    }
    int starts = blinks.size();
    long ends = blinks.stream().filter(Blink::hasOff).count();
    notes.add(
        0,
        "understood: "
            + starts
            + (starts == 1 ? " blink start" : " blink starts")
            + (ends == 0 ? "" : ends == 1 ? " and 1 end" : " and " + ends + " ends")
            + " from "
            + Numbers.text(blinks.get(0).onSeconds())
            + " to "
            + Numbers.text(blinks.get(starts - 1).onSeconds())
            + " s, "
            + PastedWriting.name(written));
  }

  /** Sorts out what the list shows as a whole: laps beside splits, clock times to the minute. */
  private List<PastedTime> columns(Shape shape, PastedScanner.Found found) {
    List<PastedTime> times = found.times();
    if (shape != Shape.TIMES || times.isEmpty()) {
      return times;
    }
    Optional<LapTable.Found> laps = LapTable.find(found);
    if (laps.isPresent()) {
      notes.add(laps.get().note());
      return laps.get().splits();
    }
    if (PastedWriting.hasBullets(times)) {
      notes.add("the dash before each time was taken for a bullet");
      return PastedWriting.withoutBullets(times);
    }
    if (times.stream().anyMatch(t -> t.style() == Style.HALF_DAY_MINUTES)) {
      notes.add(0, PastedWriting.COARSE);
    } else if (PastedWriting.isToTheMinute(times)) {
      notes.add(0, PastedWriting.COARSE);
      return PastedWriting.asHours(times);
    }
    return found.gapWords() ? laps(times, found.itemsFall()) : times;
  }

  /** A list of laps alone: the times between blinks, if they are in no order. */
  private List<PastedTime> laps(List<PastedTime> times, boolean newestFirst) {
    boolean rising = true;
    boolean falling = true;
    for (int i = 0; i < times.size(); i++) {
      if (times.get(i).isGap() || times.get(i).role() != Role.UNSAID) {
        return times;
      }
      double step = i == 0 ? 0 : times.get(i).time().value() - times.get(i - 1).time().value();
      rising &= step >= 0;
      falling &= step <= 0;
    }
    if (rising || falling) {
      return times;
    }
    List<PastedTime> gaps = new ArrayList<>(times.stream().map(PastedTime::asGap).toList());
    notes.add("the times are in no order and were taken for laps, one blink to the next");
    if (newestFirst) {
      Collections.reverse(gaps);
      notes.add("the laps are listed from the last one and were reversed");
    }
    return gaps;
  }

  /** Gives each time its role, as the shape and the words in the text ask. */
  private List<PastedTime> roles(Shape shape, List<PastedTime> found)
      throws FileException, OptionException {
    boolean labelled = false;
    boolean plus = false;
    for (PastedTime time : found) {
      labelled |= time.role() != Role.UNSAID;
      plus |= time.time().gap();
    }
    if (labelled) {
      return labelled(shape, found);
    }
    List<PastedTime> times = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      PastedTime time = found.get(i);
      if (shape == Shape.SPANS) {
        times.add(time.as(i % 2 == 0 ? Role.ON : Role.OFF));
      } else if (shape == Shape.GAPS && !(plus && i == 0)) {
        times.add(time.asGap());
      } else {
        times.add(time);
      }
    }
    if (shape == Shape.SPANS && times.size() % 2 == 1) {
      notes.add("the last blink has no end");
    }
    boolean gapsOnly = !times.isEmpty() && times.get(0).time().gap() && shape != Shape.SPANS;
    if (gapsOnly) {
      PastedTime first = times.get(0);
      TimeText start = new TimeText(Writing.NUMBER, 0, false);
      times.add(
          0, new PastedTime(Role.UNSAID, start, Style.BARE, first.line(), first.column(), "0"));
      notes.add("the list starts with a gap; its first blink is at 0 s");
    }
    return times;
  }

  private List<PastedTime> labelled(Shape shape, List<PastedTime> found)
      throws FileException, OptionException {
    if (shape == Shape.GAPS) {
      throw new OptionException("--as gaps does not fit a list with the words on and off");
    }
    for (PastedTime time : found) {
      if (time.role() == Role.UNSAID) {
        throw source.fault(
            time.line(),
            time.column(),
            "the time " + Numbers.quote(time.word()) + " has neither on nor off before it");
      }
    }
    return found;
  }

  /** Adds up gaps and brings all to seconds. */
  private double[] absolute(List<PastedTime> times) throws FileException {
    double[] seconds = new double[times.size()];
    Optional<PastedTime> model = Optional.empty();
    double before = 0;
    for (int i = 0; i < seconds.length; i++) {
      PastedTime time = times.get(i);
      boolean plain = time.time().writing() == Writing.NUMBER && time.style() == Style.BARE;
      double value = time.time().value() / (plain ? perSecond : 1);
      if (!time.time().gap()) {
        if (model.isPresent() && model.get().time().isClock() != time.time().isClock()) {
          throw source.fault(
              time.line(),
              time.column(),
              "the time "
                  + Numbers.quote(time.word())
                  + " is not written like "
                  + Numbers.quote(model.get().word())
                  + " before it; expected one writing");
        }
        model = Optional.of(time);
      }
      seconds[i] = time.time().gap() ? Numbers.tidy(before + value) : value;
      if (!(Math.abs(seconds[i]) <= RecordingClock.MAX_SECONDS)) {
        throw source.fault(
            time.line(),
            time.column(),
            Numbers.quote(time.word()) + " is too large for a time in seconds");
      }
      before = seconds[i];
    }
    return seconds;
  }

  /** Which of the text's times is 0 of the recording. */
  private double zero(TimeOrder.Ordered ordered) {
    if (ordered.seconds().isEmpty()) {
      return 0;
    }
    double first = ordered.seconds().get(0);
    boolean clock = ordered.times().stream().anyMatch(t -> t.time().isClock() && !t.time().gap());
    if (!clock && first < RecordingClock.OWN_ZERO_BELOW_SECONDS) {
      return 0;
    }
    if (first != 0) {
      notes.add("times count from the first one, " + ordered.times().get(0).word());
    }
    return first;
  }

  private RecordingClock clock(TimeOrder.Ordered ordered, double zero) {
    List<Double> seconds = ordered.seconds();
    if (seconds.isEmpty()) {
      return RecordingClock.empty();
    }
    Writing writing = Writing.NUMBER;
    for (PastedTime time : ordered.times()) {
      if (!time.time().gap() && time.time().writing().compareTo(writing) > 0) {
        writing = time.time().writing();
      }
    }
    return new RecordingClock(
        writing,
        perSecond,
        zero,
        Numbers.tidy(seconds.get(0) - zero),
        Numbers.tidy(seconds.get(seconds.size() - 1) - zero));
  }

  private List<Blink> blinks(TimeOrder.Ordered ordered, double zero) throws FileException {
    List<Double> seconds = ordered.seconds();
    List<Blink> blinks = new ArrayList<>();
    int doubled = 0;
    int endless = 0;
    for (int i = 0; i < seconds.size(); i++) {
      PastedTime time = ordered.times().get(i);
      if (time.role() == Role.OFF) {
        throw source.fault(
            time.line(),
            time.column(),
            "off " + Numbers.quote(time.word()) + " has no on before it");
      }
      double on = Numbers.tidy(seconds.get(i) - zero);
      double off = Double.NaN;
      if (i + 1 < seconds.size() && ordered.times().get(i + 1).role() == Role.OFF) {
        i++;
        off = Numbers.tidy(seconds.get(i) - zero);
      }
      if (!blinks.isEmpty() && blinks.get(blinks.size() - 1).onSeconds() == on) {
        doubled++;
        blinks.remove(blinks.size() - 1);
      }
      endless += off <= on ? 1 : 0;
      blinks.add(new Blink(on, off > on ? off : Double.NaN));
    }
    refuseStandstill(ordered, doubled);
    if (doubled > 0) {
      notes.add(doubled + (doubled == 1 ? " time stands" : " times stand") + " twice, kept once");
    }
    if (endless > 0) {
      notes.add(
          endless + (endless == 1 ? " blink ends" : " blinks end") + " at the start, end left out");
    }
    return blinks;
  }

  /** Two equal times are a double tap; three and more, and no other, are a clock that stands. */
  private void refuseStandstill(TimeOrder.Ordered ordered, int doubled) throws FileException {
    if (doubled > 1 && doubled == ordered.times().size() - 1) {
      PastedTime second = ordered.times().get(1);
      throw source.fault(
          second.line(),
          second.column(),
          "all times are equal: " + Numbers.quote(second.word()) + "; expected times that rise");
    }
  }

  private List<Blink> inside(List<Blink> blinks, Optional<Window> window) {
    if (window.isEmpty()) {
      return blinks;
    }
    List<Blink> inside = new ArrayList<>();
    for (Blink blink : blinks) {
      if (window.get().contains(blink.onSeconds())) {
        inside.add(blink);
      }
    }
    int outside = blinks.size() - inside.size();
    if (outside > 0) {
      notes.add(outsideNote(outside));
    }
    return inside;
  }

  /** Says how many blinks a window cuts off. */
  static String outsideNote(int outside) {
    return outside
        + (outside == 1 ? " blink lies" : " blinks lie")
        + " outside the window, left out";
  }
}
