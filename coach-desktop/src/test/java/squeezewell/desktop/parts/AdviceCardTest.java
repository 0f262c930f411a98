package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.accessibility.AccessibleState;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * What a screen reader is told. The means are those of the Java Accessibility API
 * (javax.accessibility, AccessibleContext): a role, and property changes of name, description and
 * state.
 */
class AdviceCardTest {
  private final AdviceCard card = new AdviceCard(new Look(Palette.darkTheme(), 1));
  private final List<String> heard = new ArrayList<>();
  private int came;

  private void listen() {
    card.getAccessibleContext()
        .addPropertyChangeListener(
            e -> {
              if (AccessibleContext.ACCESSIBLE_NAME_PROPERTY.equals(e.getPropertyName())) {
                heard.add((String) e.getNewValue());
              } else if (AccessibleState.SHOWING.equals(e.getNewValue())) {
                came++;
              }
            });
  }

  @Test
  void itIsAnAlertWithANameFromTheStart() {
    assertThat(card.getAccessibleContext().getAccessibleRole()).isEqualTo(AccessibleRole.ALERT);
    assertThat(card.getAccessibleContext().getAccessibleName()).isEqualTo("What was found");
  }

  @Test
  void whatIsShownIsAnnouncedOnceHoweverOftenItIsDrawn() {
    listen();
    card.show("No pulse", "Start chest compressions at once.");
    card.show("No pulse", "Start chest compressions at once.");
    assertThat(heard)
        .containsExactly("What was found: No pulse. Start chest compressions at once.");
    assertThat(card.getAccessibleContext().getAccessibleDescription())
        .isEqualTo("No pulse. Start chest compressions at once.");
    assertThat(came).isEqualTo(1);
  }

  @Test
  void whatIsTakenBackIsAnnouncedToo() {
    listen();
    card.show("No pulse", "Start chest compressions at once.");
    card.show("Taken back: No pulse", "The rhythm of before goes on.");
    assertThat(heard).hasSize(2).last().asString().contains("Taken back: No pulse");
  }

  @Test
  void theSameWordsAreNewsWhenTheCardHasBeenAway() {
    card.show("Vomit in the airway", "Suction.");
    card.setVisible(false);
    assertThat(card.getAccessibleContext().getAccessibleName()).isEqualTo("What was found");
    listen();
    card.show("Vomit in the airway", "Suction.");
    card.setVisible(true);
    assertThat(heard).containsExactly("What was found: Vomit in the airway. Suction.");
    assertThat(came).isPositive();
  }
}
