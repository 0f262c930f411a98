package squeezewell.desktop.screens;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import squeezewell.review.judge.Finding;

/** How the text of a finding is set out to be read at a glance. Pure. */
final class FindingWords {
  private static final String NEXT_TIME = "Next time ";

  /** What to do, and each part of a practice, begin a paragraph. */
  private static final Pattern BREAK =
      Pattern.compile(" (?=Next time |Likewise in |From \\d+:\\d\\d[^().]* \\()");

  private FindingWords() {}

  /** The text in short paragraphs, nothing left out. */
  static List<String> paragraphs(Finding finding) {
    return List.of(BREAK.split(finding.text()));
  }

  /** Whether a paragraph tells what to do, not what was done. */
  static boolean tellsWhatToDo(String paragraph) {
    return paragraph.startsWith(NEXT_TIME);
  }

  /** What to do according to the first finding; empty if that tells nothing of it. */
  static Optional<String> whatToDo(List<Finding> findings) {
    return findings.stream()
        .limit(1)
        .flatMap(f -> paragraphs(f).stream())
        .filter(FindingWords::tellsWhatToDo)
        .findFirst();
  }
}
