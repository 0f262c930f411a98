package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.equipment.Advice;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.input.BadInputException;

/** The words of the check list and of the sizes. Pure. */
final class EquipmentView {
  private EquipmentView() {}

  /** The parts of the screen. */
  enum Part {
    CHECK_LIST("Check list", 'C'),
    OXYGEN("Oxygen", 'O'),
    BREATH("Breath", 'R'),
    SIZES("Sizes", 'S');

    private final String label;
    private final char mnemonic;

    Part(String label, char mnemonic) {
      this.label = label;
      this.mnemonic = mnemonic;
    }

    String label() {
      return label;
    }

    char mnemonic() {
      return mnemonic;
    }
  }

  /** How far the check list is. */
  static String ready(int ticked, int all) {
    return ticked == all ? "All " + all + " ready" : ticked + " of " + all + " ready";
  }

  /** The topics of the sizes, in order, each once. */
  static List<String> topics(EquipmentLibrary kit) {
    return kit.sizes().stream().map(Advice::topic).distinct().toList();
  }

  /** The oral airway for a measured length. */
  static EquipmentAnswer oralAirway(EquipmentLibrary kit, String millimetres) {
    try {
      List<Integer> nearest = kit.oralAirways().nearest("Measured length", millimetres);
      String sizes = nearest.stream().map(EquipmentView::size).collect(Collectors.joining(" or "));
      List<String> lines = new ArrayList<>();
      lines.add(
          nearest.size() == 1
              ? "The nearest length that is made. Hold it against the face before you use it."
              : "Halfway between two: hold both against the face, and take the one that fits.");
      lines.add("Too small pushes the tongue back, too large presses on the epiglottis.");
      return EquipmentAnswer.of("Size " + sizes, lines, List.of(kit.oralAirways().source()));
    } catch (BadInputException e) {
      return EquipmentAnswer.putRight(e);
    }
  }

  private static String size(int millimetres) {
    String centimetres =
        millimetres % 10 == 0
            ? Integer.toString(millimetres / 10)
            : millimetres / 10 + "." + millimetres % 10;
    return centimetres + " cm (" + millimetres + " mm)";
  }
}
