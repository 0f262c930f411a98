package squeezewell.equipment;

import java.util.List;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;

/**
 * What the program knows about kit, each value with its source.
 *
 * @param reserve the pressure kept back unless another is given
 * @param reserveSource where that comes from
 * @param bagFlow the flow to a bag with a reservoir, unless another is given
 * @param bagFlowSource where that comes from
 * @param cylinders sizes of oxygen cylinders
 * @param volumes rules for the size of a breath
 * @param oralAirways the lengths of oral airways
 * @param sizes how to choose and measure
 * @param checkList what to have ready
 */
public record EquipmentLibrary(
    Pressure reserve,
    Citation reserveSource,
    Flow bagFlow,
    Citation bagFlowSource,
    List<Cylinder> cylinders,
    List<VolumeRule> volumes,
    OralAirways oralAirways,
    List<Advice> sizes,
    List<CheckItem> checkList) {
  public EquipmentLibrary {
    cylinders = List.copyOf(cylinders);
    volumes = List.copyOf(volumes);
    sizes = List.copyOf(sizes);
    checkList = List.copyOf(checkList);
  }

  /**
   * The cylinder of a size.
   *
   * @param source the option or field it came from
   * @param word the size, in capital or small letters
   * @throws BadInputException if there is none; the message lists those there are
   */
  public Cylinder cylinder(String source, String word) throws BadInputException {
    for (Cylinder cylinder : cylinders) {
      if (cylinder.isNamed(word)) {
        return cylinder;
      }
    }
    String all = cylinders.stream().map(Cylinder::id).collect(Collectors.joining(", "));
    throw BadInputException.notAllowed(source, "", word, "one of " + all);
  }
}
