package squeezewell.station.file;

/** What stands in a list of a station file under an identifier. */
public interface StationEntry {
  /** The identifier, unlike that of the others in the list. */
  String id();

  /** For people; empty if there are none. */
  String words();
}
