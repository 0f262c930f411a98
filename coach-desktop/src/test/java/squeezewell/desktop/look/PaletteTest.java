package squeezewell.desktop.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.util.List;
import org.junit.jupiter.api.Test;

class PaletteTest {
  /** Level AA for text: Web Content Accessibility Guidelines 2.1, success criterion 1.4.3. */
  private static final double TEXT_CONTRAST = 4.5;

  /** Level AA for graphics: the same guidelines, success criterion 1.4.11. */
  private static final double GRAPHICS_CONTRAST = 3;

  @Test
  void contrastIsThatOfTheGuidelines() {
    // The guidelines' own range: black on white is 21 to 1, a colour on itself 1 to 1.
    assertThat(Palette.contrast(Color.BLACK, Color.WHITE)).isCloseTo(21, within(1e-9));
    assertThat(Palette.contrast(Color.RED, Color.RED)).isEqualTo(1);
    // A widely published borderline: #767676 on white is just above 4.5 to 1.
    assertThat(Palette.contrast(new Color(0x767676), Color.WHITE)).isCloseTo(4.54, within(0.005));
  }

  @Test
  void everyTextCanBeReadOnEveryGround() {
    for (Palette palette : List.of(Palette.darkTheme(), Palette.lightTheme())) {
      for (Color ground : List.of(palette.ground(), palette.card())) {
        for (Color text :
            List.of(
                palette.text(),
                palette.softText(),
                palette.tide(),
                palette.sand(),
                palette.plum())) {
          assertThat(Palette.contrast(text, ground))
              .as("%s on %s", text, ground)
              .isGreaterThanOrEqualTo(TEXT_CONTRAST);
        }
      }
      assertThat(Palette.contrast(palette.onTide(), palette.tide()))
          .isGreaterThanOrEqualTo(TEXT_CONTRAST);
      assertThat(Palette.contrast(palette.text(), palette.active()))
          .isGreaterThanOrEqualTo(TEXT_CONTRAST);
      assertThat(Palette.contrast(palette.softText(), palette.active()))
          .isGreaterThanOrEqualTo(TEXT_CONTRAST);
    }
  }

  @Test
  void whatShowsFocusStandsOut() {
    for (Palette palette : List.of(Palette.darkTheme(), Palette.lightTheme())) {
      assertThat(Palette.contrast(palette.tide(), palette.ground()))
          .isGreaterThanOrEqualTo(GRAPHICS_CONTRAST);
      assertThat(Palette.contrast(palette.tide(), palette.active()))
          .isGreaterThanOrEqualTo(GRAPHICS_CONTRAST);
    }
  }
}
