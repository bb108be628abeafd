/** The command line: one small class a command, and what they print, draw and write. */
package lampwise.cli;
