package squeezewell.live;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;

/**
 * Keeps the program small while it runs for long. The usual collector lets the heap grow with the
 * machine's memory, not with what the program needs, and gives nothing back while it is busy; a
 * practice needs some 20 MB of heap. A runnable jar can't carry options, but these may be set by
 * the running program.
 */
public final class SmallHeap {
  private record Option(String name, String value) {}

  /** In this order: the most may never be below the least. */
  private static final List<Option> OPTIONS =
      List.of(
          new Option("MinHeapFreeRatio", "5"),
          new Option("MaxHeapFreeRatio", "15"),
          new Option("G1PeriodicGCInterval", "20000"));

  private SmallHeap() {}

  /** Asks for a small heap. A virtual machine that knows no such options is left as it is. */
  public static void ask() {
    HotSpotDiagnosticMXBean machine =
        ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class);
    if (machine == null) {
      return;
    }
    for (Option option : OPTIONS) {
      try {
        machine.setVMOption(option.name(), option.value());
      } catch (IllegalArgumentException e) {
        System.getLogger(SmallHeap.class.getName())
            .log(System.Logger.Level.DEBUG, "This virtual machine has no {0}", option.name());
      }
    }
    System.gc();
  }
}
