/** Texts that a symbol can carry to trick a reader of symbols: none breaks anything, acts, signs in, or opens another device. */
import { describe, expect, test } from 'vitest';
import { demo, demoStation } from '../support/station-fixture.ts';

const longest = 'A'.repeat(3_000);

/** By what each tries. */
const hostile: readonly (readonly [string, string])[] = [
  ['control characters', '\u0001\u0002\u0007\u001b[2J'],
  ['a NUL before a badge', `\u0000${demo.administrator}`],
  ['a NUL in a badge', `HP1\u00000017`],
  ['a NUL after a badge', `${demo.administrator}\u0000`],
  ['3,000 characters', longest],
  ['digits without end', '9'.repeat(7_000)],
  ['text that is turned round', '\u202eTUO KCEHC\u202c'],
  ['marks without end on one letter', `e${'\u0301'.repeat(2_000)}`],
  ['an address', 'https://elsewhere.invalid/?q=1'],
  ['an address of this PC', 'http://127.0.0.1/call'],
  ['a script as an address', 'javascript:alert(1)'],
  ['a page as an address', 'data:text/html,<script>alert(1)</script>'],
  ['a file as an address', 'file:///etc/passwd'],
  ['a wireless network', 'WIFI:T:WPA;S:depot;P:secret;;'],
  ['a telephone number', 'tel:*%2306%23'],
  ['a card of a person', 'BEGIN:VCARD\nFN:Ilse Marrowby\nEND:VCARD'],
  ['a script', '<script>alert(1)</script>'],
  ['a picture that fails', '<img src=x onerror=alert(1)>'],
  ['a formula', '=HYPERLINK("http://elsewhere.invalid","x")'],
  ['another formula', '@SUM(1+1)*cmd|" /C calc"!A0'],
  ['a statement', `'; DROP TABLE event; --`],
  ['a badge in quotes', `"${demo.administrator}"`],
  ['a badge or anything', `' OR badge LIKE '%`],
  ['a badge with a wildcard', 'HP1%'],
  ['a badge with a separator', `${demo.administrator}\u001d`],
  ['letters that look like a badge', 'НР10017'],
  ['wide digits of a badge', 'ＨＰ１００１７'],
  ['a badge with nothing between', 'HP\u200b10017'],
  ['a command that is none', 'XCSIGN'],
  ['a command and more', 'XCCONFIRM;XCCONFIRM'],
  ['a command in other letters', 'ХССОNFIRM'],
  ['half a pair', '\ud800'],
  ['the other half', 'x\udc00'],
  ['a name from right to left', 'אילסה מרובי'],
  ['a key of every object', '__proto__'],
  ['another key of every object', 'constructor'],
  ['a message of the catalogue', '{{name}}$t(errors:sign-in-needed)'],
  ['a printer command', '^XZ~JA^XA^FDX^FS^XZ'],
  ['a form of a GS1 element string without end', `(01)${'0'.repeat(500)}`],
  ['a message of ISO/IEC 15434 without end', `[)>\u001e06\u001d${'S1\u001d'.repeat(500)}`],
  ['the code of a place out of the folder', '.../../../etc/passwd'],
];

describe('a hostile symbol', () => {
  test('means nothing that it does not say, by whoever it is scanned, and no sentence is lost on it', async () => {
    const faults: string[] = [];
    const { station, callAs } = await demoStation({
      onFault: (error, operation) => void faults.push(`${operation}: ${String(error)}`),
    });
    await callAs('office')('session.sign-in', { badge: demo.administrator });
    for (const [what, text] of hostile)
      for (const session of ['nobody', 'window', 'office'])
        for (const typed of [false, true]) {
          const result = await station.call({
            session,
            operation: 'scan.interpret',
            input: { text, typed },
            language: 'en',
          });
          if (!result.ok) {
            expect.soft(result.error.code, what).not.toBe('internal-error');
            expect.soft(result.error.sentence, what).not.toBe('');
            continue;
          }
          const { meaning } = result.output as { meaning: string };
          expect
            .soft(['device', 'badge', 'command', 'suggestion'], `${what}: ${meaning}`)
            .not.toContain(meaning);
        }
    expect(faults).toEqual([]);
  });

  test('changes nothing and signs nobody in, at any operation that takes a scanned text', async () => {
    const { callAs, expectOutput } = await demoStation();
    const { events } = await expectOutput('record.size', {});
    for (const [what, text] of hostile) {
      const signedIn = await callAs('thief')('session.sign-in', { badge: text });
      expect.soft(signedIn.ok, what).toBe(false);
      const results = [
        await callAs('window')('tag.prove', { text }),
        await callAs('window')('bench-id.check', { text } as never),
        await callAs('window')('device.list', { search: text, limit: 5 } as never),
      ];
      for (const result of results)
        if (!result.ok) expect.soft(result.error.code, what).not.toBe('internal-error');
    }
    expect(await expectOutput('record.size', {})).toEqual({ events });
    expect(await callAs('thief')('person.list', {})).toMatchObject({ error: { code: 'sign-in-needed' } });
  });
});
