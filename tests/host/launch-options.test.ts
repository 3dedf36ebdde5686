import { expect, test } from 'vitest';
import { languages } from '../../src/domain/message.ts';
import { readLaunchOptions } from '../../src/host/launch-options.ts';

const none = { kiosk: false, desk: false, 'headless-check': false, help: false };

test.each([
  [[], none],
  [['--data', 'depot', '--port', '0', '--kiosk'], { ...none, data: 'depot', port: 0, kiosk: true }],
  [['--port=65535', '-h'], { ...none, port: 65_535, help: true }],
  ...languages.map((language): [string[], object] => [['--language', language], { ...none, language }]),
])('%j are understood', (args, options) => {
  expect(readLaunchOptions(args)).toEqual(options);
});

test.each([
  [['--port', '65536']],
  [['--port', '-1']],
  [['--port', '8.5']],
  [['--port', '']],
  [['--language', 'fr']],
  [['--language', '']],
  [['--wat']],
  [['depot']],
])('%j make no sense', (args) => {
  expect(readLaunchOptions(args)).toBeUndefined();
});
