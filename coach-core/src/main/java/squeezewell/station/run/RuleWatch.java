package squeezewell.station.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationRule;
import squeezewell.station.file.StationTask;
import squeezewell.words.Wording;

/**
 * Judges what is marked and recorded by the station's rules, each broken once. It keeps no
 * judgement, so what is taken back leaves none.
 */
final class RuleWatch {
  private static final Wording WORDS = Wording.beside(RuleWatch.class);

  private final Station station;
  private final StationWays ways;
  private final TaskMarks tasks;
  private final BreathLog log;
  private final StationTime time;
  private final List<Ordered> orders = new ArrayList<>();

  private record Ordered(String id, long clock, Set<String> holding) {}

  RuleWatch(Station station, StationWays ways, TaskMarks tasks, BreathLog log, StationTime time) {
    this.station = station;
    this.ways = ways;
    this.tasks = tasks;
    this.log = log;
    this.time = time;
  }

  /**
   * Something was ordered.
   *
   * @param holding identifiers of the findings that hold
   */
  void ordered(String orderId, long clock, Set<String> holding) {
    orders.add(new Ordered(orderId, clock, Set.copyOf(holding)));
  }

  /**
   * What is broken, in order of time.
   *
   * @param clock the station's clock
   * @param over whether the station is over
   */
  List<StationState.Fault> faults(long clock, boolean over) {
    List<StationState.Fault> faults = new ArrayList<>();
    for (StationRule rule : station.rules()) {
      if (ways.exists(rule.only())) {
        OptionalLong broken =
            rule.kind().readsBreaths() ? log.broken(rule, clock) : broken(rule, clock, over);
        if (broken.isPresent()) {
          faults.add(
              new StationState.Fault(
                  time.sessionAt(broken.getAsLong()),
                  rule.id(),
                  rule.words(),
                  false,
                  rule.severity(),
                  rule.source()));
        }
      }
    }
    for (StationTask task : station.tasks()) {
      if (over && task.critical() && tasks.isNeeded(task) && !tasks.isBegun(task.id())) {
        faults.add(
            new StationState.Fault(
                time.now(),
                task.id(),
                WORDS.say("task.missed", task.words()),
                true,
                StationRule.Severity.CRITICAL,
                ""));
      }
    }
    faults.sort(Comparator.comparingLong(StationState.Fault::atNanos));
    return faults;
  }

  private OptionalLong broken(StationRule rule, long clock, boolean over) {
    String id = rule.task();
    OptionalLong begun = tasks.begun(id);
    return switch (rule.kind()) {
      case NOT_DONE -> notDone(rule, begun, clock, over);
      case DONE_WHILE -> doneWhile(rule, begun);
      case BEFORE -> tasks.isBegunBefore(id, rule.other()) ? begun : OptionalLong.empty();
      case TOO_LONG -> {
        StationTask task = station.task(id).get();
        long most = rule.bounds().nanos().orElse(task.mostNanos().orElse(Long.MAX_VALUE));
        OptionalLong length = tasks.wholeLength(id, clock);
        yield length.isPresent() && length.getAsLong() > most
            ? OptionalLong.of(begun.getAsLong() + most + 1)
            : OptionalLong.empty();
      }
      default -> tooShort(rule, begun, clock);
    };
  }

  private OptionalLong notDone(StationRule rule, OptionalLong begun, long clock, boolean over) {
    StationTask task = station.task(rule.task()).get();
    if (!tasks.isNeeded(task)) {
      return OptionalLong.empty();
    }
    if (!rule.limit().isPresent()) {
      return over && !begun.isPresent() ? OptionalLong.of(clock) : OptionalLong.empty();
    }
    OptionalLong from = tasks.start(rule.limit().get());
    long upAt = from.orElse(0) + rule.limit().get().nanos() + 1;
    boolean late =
        from.isPresent()
            && upAt <= clock
            && begun.orElse(Long.MAX_VALUE) >= upAt
            && (task.ifFinding().isEmpty() || tasks.hasCome(task.ifFinding(), upAt));
    return late ? OptionalLong.of(upAt) : OptionalLong.empty();
  }

  private OptionalLong doneWhile(StationRule rule, OptionalLong begun) {
    for (Ordered order : orders) {
      if (order.id().equals(rule.task()) && order.holding().contains(rule.other())) {
        return OptionalLong.of(order.clock());
      }
    }
    return begun.isPresent() && tasks.holding(rule.task()).contains(rule.other())
        ? begun
        : OptionalLong.empty();
  }

  private OptionalLong tooShort(StationRule rule, OptionalLong begun, long clock) {
    String id = rule.task();
    if (!tasks.isEndedByTrainee(id)) {
      return OptionalLong.empty();
    }
    OptionalLong length = tasks.wholeLength(id, clock);
    boolean tooShort =
        rule.bounds().nanos().isPresent()
            ? length.isPresent() && length.getAsLong() < rule.bounds().nanos().getAsLong()
            : tasks.judge(station.task(id).get()) == TaskState.Length.TOO_SHORT;
    return tooShort ? OptionalLong.of(begun.getAsLong() + length.orElse(0)) : OptionalLong.empty();
  }
}
