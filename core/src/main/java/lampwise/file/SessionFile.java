package lampwise.file;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import lampwise.service.Act;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.GuideException;
import lampwise.service.LampSaid;
import lampwise.service.Situation;
import lampwise.service.Visit;
import lampwise.service.Who;
import lampwise.service.Work;
import lampwise.sheet.Condition;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * A visit as text, so that it can be left and gone on with: one {@code key: value} a line, first
 * what the visit starts from, then what happened, in order.
 */
public final class SessionFile {
  /** The first line of every session. */
  private static final String HEAD = "lampwise-session: 1";

  /** What stands where there is no word. */
  private static final String NONE = "?";

  private static final int MOST_LINES = 10_000;
  private static final String UNLISTED = "unlisted";
  private static final String INVENTED = "invented";

  private final String name;
  private final Guide guide;
  private final Map<String, String> start = new LinkedHashMap<>();
  private final List<Act> acts = new ArrayList<>();
  private final List<Integer> lines = new ArrayList<>();
  private final FaultList faults;

  private SessionFile(String name, Guide guide) {
    this.name = name;
    this.guide = guide;
    this.faults = new FaultList(name);
  }

  /**
   * Writes a visit.
   *
   * @param visit the visit
   * @return the text, a line end after each line
   */
  public static String write(Diagnosis visit) {
    Situation from = visit.situation();
    List<String> lines = new ArrayList<>(List.of(HEAD, "kind: " + from.kind().word()));
    from.power().ifPresent(power -> lines.add("power: " + power.word()));
    lines.add("complaint: " + from.complaint().word());
    if (!from.recent().isEmpty()) {
      lines.add("recent: " + String.join(", ", from.recent().stream().map(Work::word).toList()));
    }
    from.have().ifPresent(have -> lines.add("have: " + String.join(", ", have)));
    lines.add("may: " + String.join(", ", from.may().stream().map(Who::word).toList()));
    visit.acts().forEach(act -> lines.add(line(act)));
    return String.join("\n", lines) + "\n";
  }

  private static String line(Act act) {
    if (act instanceof Act.Found found) {
      return "found: " + found.finding().check() + " " + found.finding().answer();
    }
    if (act instanceof Act.Skipped skipped) {
      return "unknown: " + skipped.check();
    }
    if (act instanceof Act.Secured secured) {
      return "safe: " + secured.rule();
    }
    if (act instanceof Act.Tried tried) {
      return "tried: " + tried.remedy() + (tried.worked() ? " worked" : " failed");
    }
    if (act instanceof Act.Handed handed) {
      return "handed-over: " + handed.to().word();
    }
    if (act instanceof Act.Logged logged) {
      return "logged: " + logged.row();
    }
    LampSaid said = ((Act.Lamp) act).said();
    StringBuilder line = new StringBuilder("lamp: " + (said.invented() ? INVENTED + " 1, " : ""));
    said.conditions()
        .forEach((condition, ratio) -> line.append(condition.word() + " " + ratio + ", "));
    return line.append(UNLISTED + " " + said.unlisted()).append(seen((Act.Lamp) act)).toString();
  }

  /** What was decoded, in three words, and the names of the recordings. */
  private static String seen(Act.Lamp act) {
    Visit.Lamp seen = act.seen();
    if (seen.equals(Visit.Lamp.unseen())) {
      return "";
    }
    List<String> texts = new ArrayList<>();
    String sure =
        seen.probability().isEmpty() ? NONE : Double.toString(seen.probability().getAsDouble());
    texts.add(word(seen.state()) + " " + word(seen.condition()) + " " + sure);
    texts.addAll(seen.recordings());
    return "; " + CellText.cell(texts);
  }

  private static String word(String text) {
    return text.isEmpty() ? NONE : text;
  }

  private static String text(String word) {
    return word.equals(NONE) ? "" : word;
  }

  /**
   * Reads a visit.
   *
   * @param name the file's name, for messages
   * @param content its bytes, UTF-8
   * @param guide the guide of the visit
   * @return the visit
   * @throws FileException with every fault and its line
   */
  public static Diagnosis read(String name, byte[] content, Guide guide) throws FileException {
    String text = new String(content, StandardCharsets.UTF_8);
    List<String> lines = text.lines().limit(MOST_LINES + 1L).toList();
    if (lines.size() > MOST_LINES) {
      throw new FileException(name, MOST_LINES + 1, 1, "has more than " + MOST_LINES + " lines");
    }
    return new SessionFile(name, guide).read(lines);
  }

  private Diagnosis read(List<String> text) throws FileException {
    if (text.isEmpty() || !text.get(0).strip().equals(HEAD)) {
      throw new FileException(name, 1, 1, "is no session; its first line must be " + HEAD);
    }
    for (int i = 1; i < text.size(); i++) {
      String line = text.get(i).strip();
      int colon = line.indexOf(':');
      if (colon > 0) {
        take(i + 1, line.substring(0, colon), line.substring(colon + 1).strip());
      } else if (!line.isEmpty()) {
        faults.add(i + 1, 1, "expected a key, a colon and a value");
      }
    }
    Situation situation = situation();
    faults.throwIfAny();
    try {
      Diagnosis visit = Diagnosis.start(guide, situation);
      for (int i = 0; i < acts.size(); i++) {
        try {
          visit = visit.with(acts.get(i));
        } catch (GuideException e) {
          faults.add(lines.get(i), 1, String.valueOf(e.getMessage()));
        }
      }
      faults.throwIfAny();
      return visit;
    } catch (GuideException e) {
      throw new FileException(name, 1, 1, String.valueOf(e.getMessage()));
    }
  }

  private void take(int line, String key, String value) {
    String[] words = value.split(" +", -1);
    Optional<Act> act =
        switch (key) {
          case "found" ->
              words.length == 2
                  ? Optional.of(new Act.Found(new Finding(words[0], words[1])))
                  : Optional.empty();
          case "unknown" -> Optional.of(new Act.Skipped(value));
          case "safe" -> Optional.of(new Act.Secured(value));
          case "tried" ->
              words.length == 2 && List.of("worked", "failed").contains(words[1])
                  ? Optional.of(new Act.Tried(words[0], words[1].equals("worked")))
                  : Optional.empty();
          case "handed-over" -> Who.of(value).map(Act.Handed::new);
          case "lamp" -> lamp(CellText.texts(value));
          case "logged" -> logged(value);
          case "kind", "power", "complaint", "recent", "have", "may" -> {
            if (start.putIfAbsent(key, value) != null) {
              faults.add(line, 1, key + " stands twice");
            }
            yield Optional.empty();
          }
          default -> {
            faults.add(line, 1, "unknown key " + key);
            yield Optional.empty();
          }
        };
    if (act.isPresent()) {
      acts.add(act.get());
      lines.add(line);
    } else if (List.of("found", "tried", "handed-over", "lamp", "logged").contains(key)) {
      faults.add(line, 1, "the value of " + key + " cannot be understood: " + value);
    }
  }

  private static Optional<Act> logged(String value) {
    OptionalDouble row = Quantities.number(value);
    double number = row.orElse(0);
    boolean whole = number == Math.rint(number) && number >= 1 && number < 1e9;
    return whole ? Optional.of(new Act.Logged((int) number)) : Optional.empty();
  }

  private static Optional<Act> lamp(List<String> texts) {
    try {
      Visit.Lamp seen = texts.size() > 1 ? seen(texts) : Visit.Lamp.unseen();
      return texts.isEmpty()
          ? Optional.empty()
          : said(texts.get(0)).map(said -> new Act.Lamp(said, seen));
    } catch (NumberFormatException | GuideException e) {
      return Optional.empty();
    }
  }

  private static Visit.Lamp seen(List<String> texts) {
    String[] words = texts.get(1).split(" +", -1);
    if (words.length != 3) {
      throw new NumberFormatException(texts.get(1));
    }
    return new Visit.Lamp(
        texts.subList(2, texts.size()),
        text(words[0]),
        text(words[1]),
        words[2].equals(NONE)
            ? OptionalDouble.empty()
            : OptionalDouble.of(Double.parseDouble(words[2])));
  }

  private static Optional<LampSaid> said(String value) {
    Map<Condition, Double> ratios = new LinkedHashMap<>();
    double unlisted = Double.NaN;
    boolean invented = false;
    try {
      for (String part : value.split(", *", -1)) {
        String[] words = part.split(" +", -1);
        double ratio = words.length == 2 ? Double.parseDouble(words[1]) : Double.NaN;
        if (words[0].equals(UNLISTED)) {
          unlisted = ratio;
        } else if (words[0].equals(INVENTED)) {
          invented = true;
        } else {
          Optional<Condition> condition =
              Stream.of(Condition.values())
                  .filter(known -> known.word().equals(words[0]))
                  .findFirst();
          if (condition.isEmpty()) {
            return Optional.empty();
          }
          ratios.put(condition.get(), ratio);
        }
      }
      return Optional.of(new LampSaid(ratios, unlisted, invented));
    } catch (NumberFormatException | GuideException e) {
      return Optional.empty();
    }
  }

  private Situation situation() {
    Optional<FixtureKind> kind = one("kind", FixtureKind::of);
    Optional<Complaint> complaint = one("complaint", Complaint::of);
    if (!start.containsKey("kind") || !start.containsKey("complaint")) {
      faults.add(1, 1, "kind and complaint must be there");
    }
    return new Situation(
        kind.orElse(FixtureKind.WATER_CLOSET),
        one("power", Power::of),
        complaint.orElse(Complaint.DEAD),
        several("recent", Work::of),
        Optional.ofNullable(start.get("have")).map(SessionFile::items),
        start.containsKey("may") ? several("may", Who::of) : Situation.TECHNICIAN);
  }

  private <T> Optional<T> one(String key, Function<String, Optional<T>> of) {
    List<T> values = several(key, of);
    return values.isEmpty() ? Optional.empty() : Optional.of(values.get(0));
  }

  private <T> List<T> several(String key, Function<String, Optional<T>> of) {
    List<T> values = new ArrayList<>();
    for (String word : items(start.getOrDefault(key, ""))) {
      Optional<T> value = of.apply(word);
      if (value.isEmpty()) {
        faults.add(1, 1, key + " cannot be " + word);
      } else {
        values.add(value.get());
      }
    }
    return values;
  }

  private static List<String> items(String text) {
    return Stream.of(text.split(",", -1)).map(String::strip).filter(s -> !s.isEmpty()).toList();
  }
}
