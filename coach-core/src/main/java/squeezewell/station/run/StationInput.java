package squeezewell.station.run;

import java.util.Objects;

/**
 * Something that a person did to a station.
 *
 * @param kind what
 * @param detail identifier or words; empty if there are none
 * @param atNanos when, session time
 */
record StationInput(Kind kind, String detail, long atNanos) {
  StationInput {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(detail, "detail");
  }

  enum Kind {
    BEGIN,
    START,
    DONE,
    ORDER,
    INJECT,
    CLEAR,
    CHOOSE,
    REMARK,
    /** A squeeze or compression was recorded. */
    BREATH,
    STOP_CLOCK,
    RUN_CLOCK,
    END
  }
}
