package squeezewell.desktop.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PaletteTest {
  /** Level AA for text: Web Content Accessibility Guidelines 2.1, success criterion 1.4.3. */
  private static final double TEXT_CONTRAST = 4.5;

  /** Level AA for graphics: the same guidelines, success criterion 1.4.11. */
  private static final double GRAPHICS_CONTRAST = 3;

  private static final List<Palette> THEMES =
      List.of(
          Palette.darkTheme(),
          Palette.lightTheme(),
          Palette.highContrast(false),
          Palette.highContrast(true));

  @Test
  void contrastIsThatOfTheGuidelines() {
    // The guidelines' own range: black on white is 21 to 1, a colour on itself 1 to 1.
    assertThat(Palette.contrast(Color.BLACK, Color.WHITE)).isCloseTo(21, within(1e-9));
    assertThat(Palette.contrast(Color.RED, Color.RED)).isEqualTo(1);
    // A widely published borderline: #767676 on white is just above 4.5 to 1.
    assertThat(Palette.contrast(new Color(0x767676), Color.WHITE)).isCloseTo(4.54, within(0.005));
  }

  /** Text and what it stands on. */
  private static List<Map.Entry<Color, List<Color>>> texts(Palette p) {
    return List.of(
        Map.entry(
            p.ground(), List.of(p.text(), p.softText(), p.deep(), p.tide(), p.sand(), p.plum())),
        Map.entry(
            p.card(), List.of(p.text(), p.softText(), p.deep(), p.tide(), p.sand(), p.plum())),
        Map.entry(p.deep(), List.of(p.onDeep(), p.softOnDeep())),
        Map.entry(p.mist(), List.of(p.onMist(), p.text(), p.softText(), p.deep())),
        Map.entry(p.sandMist(), List.of(p.text(), p.sand())),
        Map.entry(p.plumMist(), List.of(p.text(), p.plum())),
        Map.entry(p.rest(), List.of(p.onRest(), p.softOnRest())),
        Map.entry(p.gap(), List.of(p.onGap(), p.softOnGap())));
  }

  @Test
  void everyTextCanBeReadOnEveryGround() {
    for (Palette palette : THEMES) {
      texts(palette)
          .forEach(
              entry ->
                  assertThat(entry.getValue())
                      .allSatisfy(
                          text ->
                              assertThat(Palette.contrast(text, entry.getKey()))
                                  .as("%s on %s", text, entry.getKey())
                                  .isGreaterThanOrEqualTo(TEXT_CONTRAST)));
    }
  }

  /** Level AAA, 1.4.6, for whoever asks for the most contrast. */
  @Test
  void highContrastIsHigh() {
    for (Palette palette : List.of(Palette.highContrast(false), Palette.highContrast(true))) {
      texts(palette)
          .forEach(
              entry ->
                  assertThat(entry.getValue())
                      .allMatch(text -> Palette.contrast(text, entry.getKey()) >= 7));
    }
  }

  @Test
  void shapesAndTheEdgesOfControlsStandOut() {
    for (Palette p : THEMES) {
      for (Color ground : List.of(p.ground(), p.card())) {
        for (Color shape : List.of(p.edge(), p.deep(), p.tide(), p.sand(), p.plum())) {
          assertThat(Palette.contrast(shape, ground)).isGreaterThanOrEqualTo(GRAPHICS_CONTRAST);
        }
      }
      assertThat(Palette.contrast(p.tide(), p.mist())).isGreaterThanOrEqualTo(GRAPHICS_CONTRAST);
    }
  }
}
