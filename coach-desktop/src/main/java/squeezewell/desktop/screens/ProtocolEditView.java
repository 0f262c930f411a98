package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.desktop.parts.Choice;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

/** What the editor of a local protocol says. Pure. */
final class ProtocolEditView {
  private static final int MOST_FAULTS_SHOWN = 4;

  private ProtocolEditView() {}

  /**
   * What stands around one field.
   *
   * @param label what it is
   * @param unit its unit in words; empty if it has none
   * @param hint what is allowed; empty where that goes without saying
   * @param fault why what was typed can't stay; empty if it can
   * @param guideline what the guideline says; empty for a field that no guideline has
   * @param source where the guideline's value comes from, if the field differs from it, else empty
   */
  record Field(
      String label, String unit, String hint, String fault, String guideline, String source) {

    /** The name for those who hear the screen. */
    String spokenName() {
      return unit.isEmpty() ? label : label + ", in " + unit;
    }

    /** Everything around the field, for those who hear the screen. */
    String spoken() {
      List<String> parts = new ArrayList<>();
      for (String part : List.of(fault, fault.isEmpty() ? hint : "", guideline, source)) {
        if (!part.isEmpty()) {
          parts.add(part);
        }
      }
      return String.join(" ", parts);
    }
  }

  /** The patients and situations of a draft, each with its place. */
  static List<Choice<Integer>> entries(ProtocolDraft draft) {
    List<Choice<Integer>> entries = new ArrayList<>();
    for (Guidance guidance : draft.entries()) {
      entries.add(new Choice<>(entries.size(), guidance.words()));
    }
    return entries;
  }

  /** What the whole is for. */
  static String about(ProtocolDraft draft) {
    String base =
        draft
            .base()
            .map(b -> "Based on " + b.title() + ". ")
            .orElse("Based on no edition of this program. ");
    return base
        + "Change what your service does otherwise, for each patient and situation. What you change"
        + " is shown as your service's own value everywhere, beside the guideline's.";
  }

  /** The field of a detail. */
  static Field field(ProtocolDraft draft, ProtocolDetail detail) {
    String optional = detail.isOptional() ? ", if you like" : "";
    return new Field(
        detail == ProtocolDetail.APPROVED_ON ? detail.label() : detail.label() + optional,
        "",
        isPlainText(detail) ? "" : Phrases.capital(detail.allowed()) + ".",
        draft.fault(detail).map(f -> "Not good yet. " + f).orElse(""),
        "",
        "");
  }

  private static boolean isPlainText(ProtocolDetail detail) {
    return detail != ProtocolDetail.YEAR
        && detail != ProtocolDetail.ID
        && detail != ProtocolDetail.APPROVED_ON;
  }

  /** The field of a value. */
  static Field field(ProtocolDraft draft, int entry, ProtocolValue value) {
    Optional<ProtocolDraft.Guideline> there = draft.guideline(entry, value);
    String base = draft.base().map(Protocol::title).orElse("");
    boolean differs =
        there.isPresent()
            && value
                .typed(draft.text(entry, value))
                .map(number -> number.compareTo(there.get().number()) != 0)
                .orElse(false);
    return new Field(
        Phrases.capital(value.label()),
        unit(value),
        "Allowed: " + value.range() + ".",
        draft.fault(entry, value).map(f -> "Not good yet. " + f).orElse(""),
        there.map(g -> guideline(g, base, value, differs)).orElse("No guideline value"),
        differs ? there.get().source().line() : "");
  }

  /** What the program chose itself is not laid at the guideline's door. */
  private static String guideline(
      ProtocolDraft.Guideline there, String base, ProtocolValue value, boolean differs) {
    String number = value.words(there.number());
    switch (there.source().confidence()) {
      case HOUSE:
        return (differs ? "Differs from this" : "This") + " program's own choice: " + number;
      case MEMORY:
        return (differs ? "Differs from " : "As in ") + base + ": " + number + " (from memory)";
      default:
        return (differs ? "Differs from " : "As in ") + base + ": " + number;
    }
  }

  private static String unit(ProtocolValue value) {
    switch (value.unit()) {
      case "s":
        return "seconds";
      case "/min":
        return "a minute";
      default:
        return "";
    }
  }

  /** Why it can't be saved, or what saving will do; a paragraph each. */
  static List<String> status(ProtocolDraft draft, boolean unsaved) {
    List<String> faults = draft.faults();
    List<String> lines = new ArrayList<>();
    if (!faults.isEmpty()) {
      lines.add(
          "It can't be saved yet: "
              + (faults.size() == 1 ? "one field is" : faults.size() + " fields are")
              + " not good yet.");
      faults.stream().limit(MOST_FAULTS_SHOWN).forEach(lines::add);
      if (faults.size() > MOST_FAULTS_SHOWN) {
        lines.add("And " + (faults.size() - MOST_FAULTS_SHOWN) + " more.");
      }
    } else if (!unsaved) {
      lines.add("Nothing to save: all of this stands in the file.");
    }
    lines.addAll(draft.advice());
    if (draft.isApprovalOlderThanValues()) {
      lines.add("The approval was given before these values were changed. Renew it or clear it.");
    }
    return lines;
  }

  /** Whether it can be saved. */
  static boolean canSave(ProtocolDraft draft) {
    return draft.faults().isEmpty();
  }
}
