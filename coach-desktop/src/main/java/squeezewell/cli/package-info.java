/**
 * The command line. Each command is one class; {@link squeezewell.cli.Cli} puts them together and
 * turns failures into one clear message and an exit code. Nothing here ends the program.
 */
package squeezewell.cli;
