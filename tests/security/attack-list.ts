/** Every attack that is tried on the program, and the file in which it is run for real: the list that a reviewer reads. */

export interface Attack {
  readonly attack: string;
  /** Under `tests`. */
  readonly file: string;
  /** Words of the names of the tests that run it. */
  readonly tests: readonly string[];
}

export const attacks: readonly Attack[] = [
  {
    attack: 'A page of another origin calls the station with the right cookie',
    file: 'security/host-door.test.ts',
    tests: ['calls nothing although the cookie is right', 'calls nothing without an origin'],
  },
  {
    attack: 'A form, a simple request, a preflight, a websocket or a tunnel of another site',
    file: 'security/host-door.test.ts',
    tests: ['sends no form and no simple request', 'by a preflight', 'no websocket and no tunnel'],
  },
  {
    attack: 'DNS rebinding, two names, a whole address in the request line',
    file: 'security/host-door.test.ts',
    tests: ['under the host name', 'with two names, or with none', 'by a whole address in the request line'],
  },
  {
    attack: 'A secret that is missing, wrong, used twice, or stolen from another start or port',
    file: 'security/host-door.test.ts',
    tests: ['is missing or wrong lets nobody in', 'was used lets nobody in again', 'of another start'],
  },
  {
    attack: 'Path traversal in more than forty spellings',
    file: 'security/host-paths.test.ts',
    tests: ['finds nothing, however it is spelled', 'by what is no path at all', 'at least forty spellings'],
  },
  {
    attack: 'Bodies that are oversized, malformed, compressed or nested 100,000 deep',
    file: 'security/host-bodies.test.ts',
    tests: ['as soon as it is announced', 'grows without being announced', '100,000 levels deep'],
  },
  {
    attack: 'Request smuggling and heads of no form',
    file: 'security/host-bodies.test.ts',
    tests: ['gives nobody an answer that they have no right to', 'is answered with nothing'],
  },
  {
    attack: 'Slow clients and too many of them',
    file: 'security/host-bodies.test.ts',
    tests: ['sends its head byte by byte', 'says nothing at all is hung up on'],
  },
  {
    attack: 'Prototype pollution through JSON, at every level of the input of every operation',
    file: 'security/prototype-pollution.test.ts',
    tests: ['changes no prototype, at whatever level'],
  },
  {
    attack:
      'Script in every text field that a person can fill, on screens, in PDFs, CSV, workbooks, calendars',
    file: 'security/text-fields.test.ts',
    tests: [
      'is text and runs nothing',
      'carries no action',
      'is made harmless in CSV',
      'is a text in a workbook',
    ],
  },
  {
    attack: 'Zip bombs, nested, overlapping, lying and escaping archives, given as a backup or a list',
    file: 'security/archive-bombs.test.ts',
    tests: ['leaves nothing behind', 'memory flat'],
  },
  {
    attack: 'Pictures of billions of dots, broken, of other kinds, or with something hidden in them',
    file: 'security/picture-bombs.test.ts',
    tests: ['is refused with a sentence', 'keeps nothing but the picture'],
  },
  {
    attack: 'Hostile QR texts',
    file: 'security/hostile-scans.test.ts',
    tests: ['means nothing that it does not say', 'changes nothing'],
  },
  {
    attack: 'IPC from a subframe, and malformed calls of the page',
    file: 'electron/main.test.ts',
    tests: ['does not answer a frame inside the page', 'answers a malformed call with a sentence'],
  },
  {
    attack: 'Navigation by links, redirects, new windows and embedded pages',
    file: 'electron/main.test.ts',
    tests: ['does not let the page be led away', 'opens no second window for the page'],
  },
  {
    attack: 'Links, pieces of pages and files dropped on the window',
    file: 'e2e/drops.test.ts',
    tests: ['is opened on a page that keeps nothing out', 'leads it nowhere'],
  },
  {
    attack: '100,000 random calls from the schemas and beyond them',
    file: 'security/random-calls.test.ts',
    tests: ['breaks the station, shows its inside, or changes anything'],
  },
  {
    attack: 'An unattended window, and a script that keeps it open',
    file: 'station/unattended.test.ts',
    tests: ['is not kept open by what it asks by itself', 'refuses every operation that takes somebody'],
  },
  {
    attack: 'Guessing a PIN, and locking somebody out by wrong ones',
    file: 'station/pin-tries.test.ts',
    tests: ['bring a wait after each fifth', 'never lock the only administrator out for good'],
  },
  {
    attack: 'Signing with a badge alone',
    file: 'station/unattended.test.ts',
    tests: ['signs nothing because a badge was scanned'],
  },
  {
    attack: 'Looking at a locked window, or using what was left in it',
    file: 'e2e/lock.test.ts',
    tests: ['shows who it belongs to and nothing else', 'forgets a PIN that was typed'],
  },
  {
    attack: 'Calling what one has no right to, by every role and by nobody',
    file: 'station/privileges.test.ts',
    tests: ['is let through where the table says so'],
  },
];
