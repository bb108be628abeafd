package lampwise.service;

import java.util.List;

/**
 * A check that must have been made, with one of some answers.
 *
 * @param check the check's id
 * @param answers the words of the answers that will do, at least one
 */
public record Requirement(String check, List<String> answers) {
  /**
   * Keeps a copy of the list.
   *
   * @throws GuideException if there is no answer
   */
  public Requirement {
    answers = List.copyOf(answers);
    Rules.that(!answers.isEmpty(), "a requirement needs at least one answer of " + check);
  }

  /**
   * Whether a finding is of this check and has one of these answers.
   *
   * @param finding the finding
   * @return true if it will do
   */
  public boolean metBy(Finding finding) {
    return finding.check().equals(check) && answers.contains(finding.answer());
  }
}
