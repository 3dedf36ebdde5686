import { describe, expect, test } from 'vitest';
import english from '../../assets/messages/en/errors.json' with { type: 'json' };
import spanish from '../../assets/messages/es/errors.json' with { type: 'json' };
import { destinationSettingsSchema } from '../../src/printing/destination-settings.ts';
import { problemOf, standstillOf } from '../../src/printing/state-reasons.ts';

const stock = { widthMm: 100, heightMm: 50 };

describe('the settings of a destination', () => {
  test('need no more than a name, the stock, and where it is', () => {
    const connection = { by: 'network', host: '192.0.2.7' };
    expect(destinationSettingsSchema.parse({ kind: 'thermal', name: 'Labels', stock, connection })).toEqual({
      kind: 'thermal',
      name: 'Labels',
      stock,
      dpi: 300,
      offset: { xMm: 0, yMm: 0 },
      colour: 'monochrome',
      connection: { by: 'network', host: '192.0.2.7', port: 9_100 },
      compression: 'run-length',
    });
  });

  test('take a fingerprint as printers show it', () => {
    const shown = Array.from({ length: 32 }, () => 'a1').join(':');
    const parsed = destinationSettingsSchema.parse({
      kind: 'ipp',
      name: 'Desk',
      stock,
      address: 'ipps://printer.example',
      certificateSha256: shown,
    });
    expect(parsed).toMatchObject({ certificateSha256: 'A1'.repeat(32) });
  });

  test.each([
    ['a queue that would be taken for an option', { kind: 'queue', name: 'Desk', stock, queue: '-oraw' }],
    ['dots that no printer has', { kind: 'queue', name: 'Desk', stock, queue: 'bench', dpi: 96 }],
    ['a stock without a height', { kind: 'folder', name: 'Files', stock: { widthMm: 100 }, folder: '/tags' }],
    ['a kind that is none', { kind: 'fax', name: 'Fax', stock }],
  ])('refuse %s', (_, settings) => {
    expect(destinationSettingsSchema.safeParse(settings).success).toBe(false);
  });
});

describe('the reasons of a printer', () => {
  const settings = destinationSettingsSchema.parse({ kind: 'ipp', name: 'Desk', stock, address: 'desk' });

  // Keywords and suffixes: RFC 8011 §5.4.12.
  test.each([
    [['none'], undefined],
    [['media-low-warning', 'toner-low-report'], undefined],
    [['media-empty-report'], undefined],
    [['media-empty'], 'printer-media-empty'],
    [['media-empty-error'], 'printer-media-empty'],
    [['media-needed-report'], 'printer-media-empty'],
    [['toner-empty-error', 'media-jam-error'], 'printer-media-jam'],
    [['door-open'], 'printer-cover-open'],
  ])('%j mean %s', (reasons, code) => {
    expect(problemOf('processing', reasons, settings)?.code).toBe(code);
  });

  test('of an empty tray do not hold up a job that is printed from another', () => {
    const reasons = ['media-empty-error'];
    const hold = (condition: 'processing' | 'stopped', job: 'processing' | 'processing-stopped') =>
      standstillOf({ condition, reasons }, job, settings, 'desk')?.code;
    expect(hold('processing', 'processing')).toBeUndefined();
    expect(hold('stopped', 'processing')).toBe('printer-media-empty');
    expect(hold('processing', 'processing-stopped')).toBe('printer-media-empty');
  });

  test('that nobody knows are quoted where the printer is stopped', () => {
    expect(problemOf('stopped', ['x-vendor-flap-error'], settings)).toMatchObject({
      code: 'printer-needs-attention',
      values: { reasons: 'x-vendor-flap' },
    });
    expect(problemOf('stopped', ['none'], settings)?.code).toBe('printer-stopped');
  });
});

describe('the sentences about printers', () => {
  test('exist in both languages with the same values', () => {
    const valuesOf = (sentence: string) => [...new Set(sentence.match(/{{\w+}}/g))].sort();
    const keys = Object.keys(english).filter((key) => key.startsWith('printer-')) as (keyof typeof english)[];
    expect(keys.length).toBeGreaterThan(20);
    for (const key of keys) expect(valuesOf(spanish[key])).toEqual(valuesOf(english[key]));
  });
});
