package squeezewell.desktop.screens;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import squeezewell.cue.PracticePlan;
import squeezewell.files.Settings;
import squeezewell.protocol.Protocol;
import squeezewell.session.Session;
import squeezewell.trainee.RecordBook;

/** Leads from one screen to the next. Called on the event thread. */
public interface Navigator {
  /** To the screen on which a practice is set up. */
  void toSetup();

  /** Starts a practice and shows it. */
  void toLive(Protocol protocol, PracticePlan plan);

  /** To the debrief of a practice. */
  void toDebrief(Session session);

  /** Reads a practice from its file, then to its debrief. */
  void openDebrief(Path file);

  /** Reads a practice from its file, then plays it back. */
  void openReplay(Path file);

  /** Reads two practices from their files, then shows them side by side, A first. */
  void toComparison(Path a, Path b);

  /** To the list of past practices. */
  void toPast();

  /** To the stations, of which one is chosen. */
  void toStations();

  /** To the guideline library. */
  void toLibrary();

  /** To the kit: check list, oxygen, breath size, sizes. */
  void toEquipment();

  /** To the local protocols: those there are, and what to copy. */
  void toLocalProtocols();

  /** To the editor, with a fresh copy of a protocol. */
  void toCopy(Protocol protocol);

  /** To the editor, with a local protocol and its file. */
  void toEdit(Path file);

  /** To sound and display. */
  void toSettings();

  /** To the cautions, and from there back to sound and display. */
  void toCautions();

  /** Opens the projector window, or closes it. */
  void toggleProjector();

  /**
   * Reads what was practised before, in the background.
   *
   * @param told told once on the event thread, unless the folder can't be read; with the time zone
   *     in which days are counted
   */
  void readBook(BiConsumer<RecordBook, ZoneId> told);

  /**
   * Reads how the last practice of a person went, in the background.
   *
   * @param told told once on the event thread; empty where there is none to go on from
   */
  void readToday(String trainee, Consumer<Optional<Today>> told);

  /** The settings in force. */
  Settings settings();

  /** Keeps new settings; the windows follow them. */
  void keep(Settings settings);
}
