package squeezewell.protocol;

import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;

/** Reads the time limits of a protocol file: those of a patient, and where a rhythm differs. */
final class LimitsReader {
  private final ProtocolValues values;
  private final JsonValue patient;
  private final JsonValue own;

  private LimitsReader(ProtocolValues values, JsonValue patient, JsonValue own) {
    this.values = values;
    this.patient = patient;
    this.own = own;
  }

  /** The limits of a patient. */
  static Limits read(ProtocolValues values, JsonValue patient) throws BadInputException {
    return new LimitsReader(values, patient, patient).limits();
  }

  /** The limits of a rhythm: its own, and the patient's for those that it does not name. */
  static Limits read(ProtocolValues values, JsonValue patient, JsonValue own)
      throws BadInputException {
    return new LimitsReader(values, patient, own).limits();
  }

  private Limits limits() throws BadInputException {
    Limit every = limit("pulseCheckEvery", "10", "3600");
    Limit notice = limit("pulseCheckNotice", "1", "60");
    Limit shortest = limit("pulseCheckShortest", "1", "60");
    Limit longest = limit("pulseCheckLongest", "1", "60");
    Limit suction = limit("suctionLongest", "1", "60");
    Limit suctionNotice = limit("suctionNotice", "0.5", "30");
    Limit gap = limit("gapLongest", "1", "120");
    ordered(
        "pulseCheckNotice", notice.nanos() <= every.nanos() / 2, "at most half of pulseCheckEvery");
    ordered("pulseCheckShortest", shortest.nanos() <= longest.nanos(), "at most pulseCheckLongest");
    ordered("suctionNotice", suctionNotice.nanos() < suction.nanos(), "under suctionLongest");
    return new Limits(every, notice, shortest, longest, suction, suctionNotice, gap);
  }

  private Limit limit(String name, String least, String most) throws BadInputException {
    return values.limit(own.has(name) ? own : patient, name, least, most);
  }

  private void ordered(String name, boolean ok, String allowed) throws BadInputException {
    JsonValue owner = own.has(name) ? own : patient;
    ProtocolValues.ordered(owner.field(name, ""), "value", ok, allowed);
  }
}
