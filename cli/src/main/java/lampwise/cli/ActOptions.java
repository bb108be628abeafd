package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.service.Act;
import lampwise.service.Check;
import lampwise.service.Finding;
import lampwise.service.Guide;
import lampwise.service.Remedy;
import lampwise.service.Who;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The options that say what was done and found at a fixture. */
final class ActOptions {
  private static final WordOption<Who> OVER = new WordOption<>("--over", Who.values(), Who::word);

  private ActOptions() {}

  /** Adds the options to a command. */
  static void addTo(CommandSpec spec) {
    ReadingFlags.many(spec, "--found", "CHECK=ANSWER", "what a check showed; repeatable");
    ReadingFlags.many(spec, "--safe", "RULE", "a danger that was dealt with; repeatable");
    ReadingFlags.many(spec, "--tried", "REMEDY", "a remedy that did not help; repeatable");
    ReadingFlags.one(spec, "--worked", "REMEDY", "the remedy after which it worked");
    OVER.addOnce(spec, "WHO", "it was handed over to: ");
  }

  /**
   * What was done, dangers first, then checks, remedies and handing over.
   *
   * @throws UsageException if the guide does not know a check, an answer or a remedy
   */
  static List<Act> given(ParseResult parsed, Guide guide) throws UsageException {
    List<Act> acts = new ArrayList<>();
    for (String rule : parsed.matchedOptionValue("--safe", List.<String>of())) {
      acts.add(new Act.Secured(rule));
    }
    for (String finding : parsed.matchedOptionValue("--found", List.<String>of())) {
      int equals = finding.indexOf('=');
      if (equals < 1) {
        throw new UsageException(
            "--found takes CHECK=ANSWER, such as bowl=clear, not " + Layout.clean(finding));
      }
      acts.add(found(guide, finding.substring(0, equals), finding.substring(equals + 1)));
    }
    for (String remedy : parsed.matchedOptionValue("--tried", List.<String>of())) {
      acts.add(tried(guide, "--tried", remedy, false));
    }
    Optional<String> worked = ReadingFlags.text(parsed, "--worked");
    if (worked.isPresent()) {
      acts.add(tried(guide, "--worked", worked.get(), true));
    }
    OVER.one(parsed).ifPresent(who -> acts.add(new Act.Handed(who)));
    return acts;
  }

  private static Act tried(Guide guide, String option, String remedy, boolean worked)
      throws UsageException {
    if (guide.remedy(remedy).isEmpty()) {
      throw new UsageException(
          option
              + ": unknown remedy "
              + Layout.clean(remedy)
              + "; "
              + Near.said(remedy, guide.remedies().stream().map(Remedy::id).toList()));
    }
    return new Act.Tried(remedy, worked);
  }

  private static Act found(Guide guide, String id, String word) throws UsageException {
    Optional<Check> check = guide.check(id);
    if (check.isEmpty()) {
      throw new UsageException(
          "--found: unknown check "
              + Layout.clean(id)
              + "; "
              + Near.said(id, guide.checks().stream().map(Check::id).toList()));
    }
    if (word.equals("?")) {
      return new Act.Skipped(id);
    }
    if (check.get().answer(word).isEmpty()) {
      List<String> known = check.get().answers().stream().map(answer -> answer.word()).toList();
      throw new UsageException(
          "--found: "
              + id
              + " has no answer "
              + Layout.clean(word)
              + "; known: "
              + String.join(", ", known)
              + ", ?");
    }
    return new Act.Found(new Finding(id, word));
  }
}
