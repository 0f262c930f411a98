package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Protocol;
import squeezewell.station.file.Station;
import squeezewell.station.run.StationMode;
import squeezewell.words.Quantities;

/** What the screen on which a station is chosen says. Pure. */
final class StationsView {
  private static final int LONGEST_SEED = 9;

  private StationsView() {}

  /** The name of a station in the list. */
  static String name(Station station, Set<String> own) {
    return station.title() + (own.contains(station.id()) ? " (your own)" : "");
  }

  /** What is told of a station before it begins, a paragraph each. */
  static List<String> lines(Station station) {
    List<String> lines = new ArrayList<>();
    lines.add(station.setting());
    lines.add("Patient: " + station.patient() + ".");
    lines.add(
        (station.preparationNanos() > 0
                ? "Preparation up to "
                    + Quantities.clock(station.preparationNanos())
                    + ", exercise "
                : "Exercise ")
            + Quantities.clock(station.exerciseNanos())
            + ". "
            + Quantities.count(station.tasks().size(), "task")
            + " at most.");
    return lines;
  }

  /** The rhythm that it begins with, in an edition. */
  static String rhythm(Station station, Protocol edition) {
    return guidance(station, edition)
        .map(g -> "Begins with: " + Phrases.rhythm(g) + ".")
        .orElse("This edition has no rhythm for it.");
  }

  /** What an edition asks for at the start of a station. */
  static Optional<Guidance> guidance(Station station, Protocol edition) {
    return edition.find(station.group(), station.situation());
  }

  /** The editions in which a station can be run. */
  static List<Protocol> editions(Station station, List<Protocol> all) {
    List<Protocol> fit = new ArrayList<>();
    for (Protocol protocol : all) {
      if (guidance(station, protocol).isPresent()) {
        fit.add(protocol);
      }
    }
    return fit;
  }

  /** Who is there, in a sentence. */
  static String mode(StationMode mode) {
    return switch (mode) {
      case ALONE ->
          "The program plays the examiner. You tap what you do, or say it and press its key.";
      case PARTNER -> "The program plays the examiner. A second person taps what they see you do.";
      case INSTRUCTOR ->
          "The instructor has a window of their own: findings come and go as they choose, tasks are"
              + " marked, remarks are written, the clock is stopped.";
    };
  }

  /** The chance number; empty if the text is none. Up to nine digits. */
  static OptionalLong seed(String text) {
    String digits = text.trim();
    return digits.matches("[0-9]{1," + LONGEST_SEED + "}")
        ? OptionalLong.of(Long.parseLong(digits))
        : OptionalLong.empty();
  }
}
