package squeezewell.station.file;

/**
 * Something about the patient that holds or does not.
 *
 * @param id identifier
 * @param words for people
 * @param atStart whether it holds when the exercise begins
 * @param lasting whether the station's author means it never to go away
 * @param hidden whether only an examiner may see it before something shows it
 * @param stopsBreaths whether no air goes in while it holds, so that the time is no ventilation
 */
public record StationFinding(
    String id, String words, boolean atStart, boolean lasting, boolean hidden, boolean stopsBreaths)
    implements StationEntry {}
