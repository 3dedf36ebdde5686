/** Control characters as they can be typed in a terminal: `<GS>`, `<RS>`, `<EOT>`, `<NUL>`, or `\x1d`. */

/** ISO/IEC 646. */
const named: Readonly<Record<string, string>> = {
  GS: '\x1d',
  RS: '\x1e',
  EOT: '\x04',
  NUL: '\0',
  FS: '\x1c',
  US: '\x1f',
};

/** What has no such meaning is left as it stands. */
export const withControlCharacters = (text: string): string =>
  text
    .replace(/<([A-Z]{2,3})>/g, (whole, name: string) => named[name] ?? whole)
    .replace(/\\x([0-9A-Fa-f]{2})/g, (_whole, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
