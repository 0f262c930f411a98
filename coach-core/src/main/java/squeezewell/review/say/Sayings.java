package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import squeezewell.cue.CheckKind;
import squeezewell.protocol.PatientChange;
import squeezewell.review.judge.Finding;
import squeezewell.review.judge.Quantity;
import squeezewell.review.judge.Sentence;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Where;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** Puts what was judged into words. */
final class Sayings {
  static final Wording WORDS = Wording.beside(Sayings.class);

  private Sayings() {}

  /** A sentence by itself. */
  static String sentence(Sentence sentence) {
    String text = clause(sentence);
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** A sentence as a part of another. */
  static String clause(Sentence sentence) {
    return WORDS.say(
        sentence.key(), sentence.values().stream().map(Sayings::value).toArray(Object[]::new));
  }

  static String sentences(List<Sentence> sentences) {
    List<String> texts = new ArrayList<>();
    sentences.forEach(sentence -> texts.add(sentence(sentence)));
    return String.join(" ", texts);
  }

  /** The title of a finding, with its place. */
  static String title(Finding finding) {
    String title = sentence(finding.title());
    return finding.where().isEmpty()
        ? title
        : title + ", " + Quantities.list(places(finding.where()));
  }

  /** How a passage on a part begins. */
  static String from(Where part) {
    String start = Quantities.clock(part.startNanos());
    String situation = part.situation().label();
    return part.last()
        ? WORDS.say("passage.from", start, situation)
        : WORDS.say("passage.from-to", start, Quantities.clock(part.endNanos()), situation);
  }

  private static Object value(Object value) {
    if (value instanceof Quantity quantity) {
      return quantity(quantity);
    }
    if (value instanceof Sentence sentence) {
      return clause(sentence);
    }
    if (value instanceof Finding finding) {
      String title = title(finding);
      return title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
    }
    if (value instanceof CheckKind kind) {
      return kind.words();
    }
    if (value instanceof PatientChange found) {
      return found.label().toLowerCase(Locale.ROOT);
    }
    if (value instanceof Severity severity) {
      return severity.label();
    }
    if (value instanceof List<?> values) {
      boolean quantities = values.get(0) instanceof Quantity;
      return values.stream()
          .map(each -> value(each).toString())
          .collect(Collectors.joining(quantities ? ", " : "; "));
    }
    return value;
  }

  private static String quantity(Quantity quantity) {
    String shown = shown(quantity.value(), quantity.form());
    double limit = quantity.limit().orElse(quantity.value());
    if (quantity.value() == limit || !shown.equals(shown(limit, quantity.form()))) {
      return shown;
    }
    return (quantity.value() < limit ? "just under " : "just over ") + shown;
  }

  private static String shown(double value, Quantity.Form form) {
    return switch (form) {
      case TENTHS -> Words.decimal(value);
      case HUNDREDTHS -> Words.hundredths(value);
      case CLOCK -> Quantities.clock((long) value);
    };
  }

  /** Parts that follow each other are one place. */
  private static List<String> places(List<Where> parts) {
    List<String> places = new ArrayList<>();
    Where first = parts.get(0);
    for (int i = 0; i < parts.size(); i++) {
      Where last = parts.get(i);
      boolean goesOn = i + 1 < parts.size() && parts.get(i + 1).startNanos() == last.endNanos();
      if (!goesOn) {
        places.add(place(first, last));
        first = i + 1 < parts.size() ? parts.get(i + 1) : last;
      }
    }
    return places;
  }

  private static String place(Where first, Where last) {
    String start = Quantities.clock(first.startNanos());
    String end = Quantities.clock(last.endNanos());
    if (first.first()) {
      return WORDS.say("place.before", end);
    }
    return last.last() ? WORDS.say("place.after", start) : WORDS.say("place.between", start, end);
  }
}
