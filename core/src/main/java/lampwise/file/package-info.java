/**
 * Text in and out: recordings, code sheets, JSON. The only package that knows files and formats.
 */
package lampwise.file;
