package squeezewell.station.file;

/**
 * Something that the trainee does or has done by the partner, as often as wanted, and that is not
 * on the list of tasks.
 *
 * @param id identifier
 * @param words for people
 */
public record StationOrder(String id, String words) implements StationEntry {}
