package squeezewell.desktop;

import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.File;
import java.time.Duration;
import java.time.Instant;
import java.util.Scanner;
import java.util.concurrent.locks.LockSupport;
import javax.imageio.ImageIO;

/**
 * A process of its own that presses real keys and buttons at given instants of the wall clock, and
 * says when it did. Reads lines {@code INSTANT down|up space|p|return|end|pad} and {@code shot
 * FILE}; writes a line {@code INSTANT WORD KEY} for each.
 */
public final class KeySender {
  private static final int PAD_X = 206;
  private static final int PAD_Y = 690;

  private KeySender() {}

  public static void main(String[] args) throws Exception {
    Robot robot = new Robot();
    robot.mouseMove(PAD_X, PAD_Y);
    System.out.println("ready");
    try (Scanner in = new Scanner(System.in, java.nio.charset.StandardCharsets.UTF_8)) {
      while (in.hasNextLine()) {
        String[] words = in.nextLine().split(" ", -1);
        if (words[0].equals("shot")) {
          ImageIO.write(
              robot.createScreenCapture(new Rectangle(0, 0, 412, 892)), "png", new File(words[1]));
          System.out.println("shot");
          continue;
        }
        waitUntil(Instant.parse(words[0]));
        act(robot, words[1].equals("down"), words[2]);
        System.out.println(Instant.now() + " " + words[1] + " " + words[2]);
      }
    }
  }

  private static void waitUntil(Instant at) {
    for (Duration left = Duration.between(Instant.now(), at);
        !left.isNegative() && !left.isZero();
        left = Duration.between(Instant.now(), at)) {
      LockSupport.parkNanos(left.toNanos());
    }
  }

  private static void act(Robot robot, boolean down, String key) {
    if (key.equals("pad")) {
      if (down) {
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
      } else {
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
      }
      return;
    }
    int code =
        switch (key) {
          case "space" -> KeyEvent.VK_SPACE;
          case "p" -> KeyEvent.VK_P;
          case "f" -> KeyEvent.VK_F;
          case "c" -> KeyEvent.VK_C;
          case "z" -> KeyEvent.VK_Z;
          case "1" -> KeyEvent.VK_1;
          case "end" -> KeyEvent.VK_END;
          default -> KeyEvent.VK_ENTER;
        };
    if (down) {
      robot.keyPress(code);
    } else {
      robot.keyRelease(code);
    }
  }
}
