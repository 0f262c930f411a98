package squeezewell;

import java.awt.GraphicsEnvironment;
import java.io.BufferedWriter;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FilterOutputStream;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.time.Clock;
import java.util.concurrent.atomic.AtomicBoolean;
import squeezewell.cli.Cli;
import squeezewell.cli.CliContext;
import squeezewell.desktop.Simulator;

/** Entry point of the runnable jar. The only place that ends the program. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    StringWriter said = new StringWriter();
    AtomicBoolean windowOpen = new AtomicBoolean();
    boolean terminal = isTerminal();
    Charset charset = terminal ? System.console().charset() : Charset.defaultCharset();
    CliContext around =
        new CliContext(
            writer(FileDescriptor.out, charset),
            new PrintWriter(new Copied(writer(FileDescriptor.err, charset), said), true),
            System.in,
            terminal,
            GraphicsEnvironment.isHeadless(),
            charset,
            Clock.systemUTC(),
            home -> {
              windowOpen.set(Simulator.open(home));
              return windowOpen.get();
            });
    int code = Cli.run(args, around);
    if (code != 0 && args.length == 0 && !terminal) {
      Simulator.sayThatItDidNotOpen(said.toString());
    }
    // An open window keeps the program running until it is closed.
    if (!windowOpen.get()) {
      System.exit(code);
    }
  }

  /** From Java 22 on there is a console even where a pipe is; it then has a method that tells. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  /** Writes on, and keeps a copy for a person who started the program without a terminal. */
  private static final class Copied extends FilterWriter {
    private final StringWriter copy;

    Copied(Writer to, StringWriter copy) {
      super(to);
      this.copy = copy;
    }

    @Override
    public void write(int c) throws IOException {
      out.write(c);
      copy.write(c);
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
      out.write(text, from, length);
      copy.write(text, from, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
      out.write(text, from, length);
      copy.write(text, from, length);
    }
  }

  /** Whoever reads only the first lines has what was wanted: the rest goes nowhere. */
  private static final class Pipe extends FilterOutputStream {
    private boolean closed;

    Pipe(OutputStream to) {
      super(to);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      if (closed) {
        return;
      }
      try {
        out.write(bytes, from, length);
      } catch (IOException e) {
        // The words of Linux and macOS, and of Windows.
        String words = String.valueOf(e.getMessage());
        closed = words.contains("Broken pipe") || words.contains("pipe is being closed");
        if (!closed) {
          throw e;
        }
      }
    }
  }

  private static PrintWriter writer(FileDescriptor descriptor, Charset charset) {
    return new PrintWriter(
        new BufferedWriter(
            new OutputStreamWriter(new Pipe(new FileOutputStream(descriptor)), charset)),
        true);
  }
}
