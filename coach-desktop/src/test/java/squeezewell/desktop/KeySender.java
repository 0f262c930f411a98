package squeezewell.desktop;

import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.File;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Scanner;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * A process of its own that presses real keys and buttons at given instants of the wall clock, and
 * says when it did. Reads lines {@code INSTANT down|up KEY}, {@code INSTANT move X,Y}, {@code
 * INSTANT wheel STEPS} and {@code shot FILE [X,Y,WIDTH,HEIGHT]}; writes a line {@code FROM TO WORD
 * KEY} for each: the robot comes back when the window system has taken the key, so that it happened
 * between the two instants, however busy the machine is. A key is {@code pad} for the mouse button,
 * or the end of the name of a constant of {@link KeyEvent}, such as {@code space}, {@code end} or
 * {@code n}.
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
          ImageIO.write(robot.createScreenCapture(part(words)), "png", new File(words[1]));
          System.out.println("shot");
          continue;
        }
        waitUntil(Instant.parse(words[0]));
        Instant from = Instant.now();
        act(robot, words[1], words[2]);
        System.out.println(from + " " + Instant.now() + " " + words[1] + " " + words[2]);
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

  private static Rectangle part(String[] words) {
    if (words.length < 3) {
      return new Rectangle(0, 0, 412, 892);
    }
    int[] at = numbers(words[2]);
    return new Rectangle(at[0], at[1], at[2], at[3]);
  }

  private static int[] numbers(String text) {
    return Stream.of(text.split(",", -1)).mapToInt(Integer::parseInt).toArray();
  }

  private static void act(Robot robot, String word, String key) throws Exception {
    boolean down = word.equals("down");
    if (word.equals("move")) {
      int[] at = numbers(key);
      robot.mouseMove(at[0], at[1]);
    } else if (word.equals("wheel")) {
      robot.mouseWheel(Integer.parseInt(key));
    } else if (key.equals("pad")) {
      if (down) {
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
      } else {
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
      }
    } else if (down) {
      robot.keyPress(code(key));
    } else {
      robot.keyRelease(code(key));
    }
  }

  private static int code(String key) throws ReflectiveOperationException {
    String name = key.equals("return") ? "ENTER" : key.toUpperCase(Locale.ROOT);
    return KeyEvent.class.getField("VK_" + name).getInt(null);
  }
}
