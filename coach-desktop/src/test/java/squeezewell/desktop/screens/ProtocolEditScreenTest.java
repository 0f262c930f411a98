package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

class ProtocolEditScreenTest {
  private final List<Protocol> saved = new ArrayList<>();
  private final AtomicInteger asked = new AtomicInteger();
  private final AtomicInteger left = new AtomicInteger();
  private boolean canWrite = true;

  private ProtocolEditScreen copy() {
    return ProtocolEditScreen.build(
        new Widgets(new Look(Palette.darkTheme(), 1)),
        ProtocolDraft.copyOf(
            Practices.protocol("aha-2025"),
            GuidelineLibrary.baseOf(Practices.protocol("aha-2025")),
            Set.of(),
            2026),
        false,
        draft -> {
          saved.add(draft.protocol());
          return new ProtocolEditScreen.Saving(canWrite, canWrite ? "Saved." : "Not saved.");
        },
        () -> asked.incrementAndGet() > 1,
        left::incrementAndGet);
  }

  @Test
  void savingWaitsUntilNothingIsWrongAndKeepsWhatWasTyped() {
    ProtocolEditScreen screen = copy();
    assertThat(save(screen).isEnabled()).isFalse();
    assertThat(spoken(save(screen))).contains("Your organisation. Allowed: ");
    field(screen, "organisation").setText("A service");
    assertThat(save(screen).isEnabled()).isTrue();
    field(screen, "BREATH_INTERVAL").setText("600");
    assertThat(save(screen).isEnabled()).isFalse();
    assertThat(spoken(field(screen, "BREATH_INTERVAL"))).startsWith("Not good yet. Allowed: ");
    field(screen, "BREATH_INTERVAL").setText("6.5");
    assertThat(spoken(field(screen, "BREATH_INTERVAL"))).contains("Differs from AHA 2025: 6 s");
    save(screen).doClick();
    assertThat(saved).hasSize(1);
    assertThat(saved.get(0).organisation()).isEqualTo("A service");
    assertThat(saved.get(0).guidance().get(0).rhythm().steadyBreaths().get().interval().seconds())
        .isEqualTo(6.5);
    save(screen).doClick();
    assertThat(saved).as("what stands in the file is not written again").hasSize(1);
  }

  @Test
  void aFieldIsNamedWithItsUnitForThoseWhoHearTheScreen() {
    JTextField field = field(copy(), "BREATH_INTERVAL");
    assertThat(field.getAccessibleContext().getAccessibleName())
        .isEqualTo("Breath every, in seconds");
    assertThat(spoken(field)).isEqualTo("Allowed: 0.5 to 60 s. As in AHA 2025: 6 s");
  }

  @Test
  void whatIsNotSavedIsLostOnlyWhenThePersonSaysSo() {
    ProtocolEditScreen screen = copy();
    JButton back = find(screen.page(), JButton.class, b -> "Back".equals(b.getText())).get();
    back.doClick();
    assertThat(asked).hasValue(1);
    assertThat(left).hasValue(0);
    back.doClick();
    assertThat(left).hasValue(1);
  }

  @Test
  void whatIsSavedCanBeLeftUnasked() {
    ProtocolEditScreen screen = copy();
    field(screen, "organisation").setText("A service");
    save(screen).doClick();
    assertThat(screen.mayLeave()).isTrue();
    assertThat(asked).hasValue(0);
    field(screen, "title").setText("Orders");
    assertThat(screen.mayLeave()).isFalse();
    assertThat(asked).hasValue(1);
  }

  @Test
  void whatCouldNotBeWrittenIsStillUnsaved() {
    canWrite = false;
    ProtocolEditScreen screen = copy();
    field(screen, "organisation").setText("A service");
    save(screen).doClick();
    assertThat(spoken(save(screen))).startsWith("Not saved.");
    assertThat(screen.mayLeave()).isFalse();
  }

  @Test
  void anotherSituationShowsItsOwnFieldsAndKeepsWhatWasTyped() {
    ProtocolEditScreen screen = copy();
    field(screen, "GAP_LONGEST").setText("9");
    JComboBox<?> entries = find(screen.page(), JComboBox.class, c -> true).get();
    entries.setSelectedIndex(2);
    assertThat(field(screen, "CYCLE_COMPRESSIONS").getText()).isEqualTo("30");
    assertThat(find(screen.page(), JTextField.class, f -> "BREATH_INTERVAL".equals(f.getName())))
        .isEmpty();
    entries.setSelectedIndex(0);
    assertThat(field(screen, ProtocolValue.GAP_LONGEST.name()).getText()).isEqualTo("9");
  }

  private static JButton save(ProtocolEditScreen screen) {
    return find(screen.page(), JButton.class, b -> "save".equals(b.getName())).get();
  }

  private static JTextField field(ProtocolEditScreen screen, String name) {
    return find(screen.page(), JTextField.class, f -> name.equals(f.getName())).get();
  }

  private static String spoken(Component part) {
    return part.getAccessibleContext().getAccessibleDescription();
  }

  private static <T> Optional<T> find(
      Container in, Class<T> type, java.util.function.Predicate<T> which) {
    for (Component part : in.getComponents()) {
      if (type.isInstance(part) && which.test(type.cast(part))) {
        return Optional.of(type.cast(part));
      }
      if (part instanceof Container inner) {
        Optional<T> found = find(inner, type, which);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }
}
