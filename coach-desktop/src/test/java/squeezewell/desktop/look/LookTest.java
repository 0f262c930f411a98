package squeezewell.desktop.look;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LookTest {
  @Test
  void aLookThatFitsStaysAsItIs() {
    Look look = new Look(Palette.lightTheme(), 1.5);
    assertThat(look.fitting(600, 900, 330, 580)).isSameAs(look);
  }

  @Test
  void aLookTooLargeForItsPlaceShrinksByTheTighterSide() {
    // Worked by hand: 824 / 330 is 2.5, 580 / 580 is 1; the smaller one rules.
    Look look = new Look(Palette.lightTheme(), 2);
    assertThat(look.fitting(824, 580, 330, 580).scale()).isEqualTo(1);
    // 165 / 330 is 0.5, the least there is.
    assertThat(look.fitting(165, 2000, 330, 580).scale()).isEqualTo(0.5);
    assertThat(look.fitting(10, 10, 330, 580).scale()).isEqualTo(0.5);
  }
}
