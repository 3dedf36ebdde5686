/** A printer while it is being entered: its fields, what is wrong with them, and the settings that they make. */
import { describe, expect, it } from 'vitest';
import {
  draftOf,
  faultsIn,
  freshDraft,
  numberIn,
  ofKind,
  type PrinterDraft,
  placeOf,
  settingsOf,
} from '../../renderer/screens/setup/printer-draft.ts';
import { destinationSettingsSchema } from '../../src/printing/destination-settings.ts';

const fingerprint = 'ab'.repeat(32);

const drafts: readonly PrinterDraft[] = [
  { ...freshDraft, name: 'Shared folder', folder: '/srv/tags', withPicture: false },
  { ...freshDraft, kind: 'queue', name: 'Office', queue: 'Office_2', colour: 'colour', dpi: '600' },
  {
    ...freshDraft,
    kind: 'ipp',
    name: 'Hall',
    address: 'ipp://192.0.2.7/ipp/print',
    format: 'pdf',
    loadedStock: 'any',
    certificateSha256: fingerprint.toUpperCase(),
  },
  {
    ...ofKind(freshDraft, 'thermal'),
    name: 'Labels',
    host: '192.0.2.9',
    port: '6101',
    darkness: '20',
    speed: '3',
    widthMm: '75.5',
    offset: { xMm: -0.5, yMm: 1.2 },
  },
  { ...ofKind(freshDraft, 'thermal'), name: 'Raw', by: 'queue', queue: 'labels-raw', compression: 'z64' },
];

describe('a printer in the making', () => {
  it.each(drafts)('makes settings that the station takes, $kind $name', (draft) => {
    expect(faultsIn(draft)).toEqual({});
    expect(destinationSettingsSchema.safeParse(settingsOf(draft)).success).toBe(true);
  });

  it.each(drafts)('is the same again when it is opened for a change, $kind $name', (draft) => {
    const settings = destinationSettingsSchema.parse(settingsOf(draft));
    const again = draftOf({
      printerId: 'p',
      settings,
      tagKinds: ['status'],
      face: { form: { shape: 'flat' } },
    });
    expect(settingsOf(again)).toEqual(settingsOf(draft));
    expect(again.tagKinds).toEqual(['status']);
  });

  it('starts with stock of 100 × 50 mm, and with the dots that are usual on its kind', () => {
    expect(settingsOf(freshDraft).stock).toEqual({ widthMm: 100, heightMm: 50 });
    expect(ofKind(freshDraft, 'thermal').dpi).toBe('203');
    expect(ofKind(ofKind(freshDraft, 'thermal'), 'ipp').dpi).toBe('300');
  });

  it('keeps the dots that somebody chose when the kind changes', () => {
    expect(ofKind({ ...freshDraft, dpi: '600' }, 'thermal').dpi).toBe('600');
  });

  it('lacks what its kind needs and nothing that only another kind needs', () => {
    expect(Object.keys(faultsIn(freshDraft)).sort()).toEqual(['folder', 'name']);
    expect(Object.keys(faultsIn(ofKind(freshDraft, 'queue'))).sort()).toEqual(['name', 'queue']);
    expect(Object.keys(faultsIn(ofKind(freshDraft, 'ipp'))).sort()).toEqual(['address', 'name']);
    expect(Object.keys(faultsIn(ofKind(freshDraft, 'thermal'))).sort()).toEqual(['host', 'name']);
  });

  it.each([
    [{ widthMm: '9' }, 'widthMm'],
    [{ heightMm: '421' }, 'heightMm'],
    [{ port: '70000' }, 'port'],
    [{ darkness: '31' }, 'darkness'],
    [{ speed: '2.5' }, 'speed'],
    [{ speed: 'fast' }, 'speed'],
  ] as const)('says what is wrong with %j', (part, field) => {
    const sound = drafts.find(({ name }) => name === 'Labels')!;
    expect(Object.keys(faultsIn({ ...sound, ...part }))).toEqual([field]);
  });

  it('leaves darkness and speed to the printer where nothing is written', () => {
    const settings = settingsOf(drafts.find(({ name }) => name === 'Raw')!);
    expect(settings).not.toHaveProperty('darkness');
    expect(settings).not.toHaveProperty('speedInchesPerSecond');
  });

  it('takes a fingerprint with or without colons, and nothing shorter', () => {
    const sound = drafts.find(({ name }) => name === 'Hall')!;
    const colons = (fingerprint.match(/../g) ?? []).join(':');
    expect(faultsIn({ ...sound, certificateSha256: colons })).toEqual({});
    expect(Object.keys(faultsIn({ ...sound, certificateSha256: 'AB:CD' }))).toEqual(['certificateSha256']);
  });
});

describe('a number as people type it', () => {
  it('has a point or a comma, and is none where it is not a plain number', () => {
    expect(numberIn(' 50,5 ')).toBe(50.5);
    expect(numberIn('50.5')).toBe(50.5);
    expect(numberIn('0')).toBe(0);
    expect(numberIn('')).toBeNaN();
    expect(numberIn('1e3')).toBeNaN();
  });
});

describe('the place of a printer', () => {
  it('is its folder, its queue, its address, or its host with the port', () => {
    const places = drafts.map((draft) => placeOf(destinationSettingsSchema.parse(settingsOf(draft))));
    expect(places).toEqual([
      '/srv/tags',
      'Office_2',
      'ipp://192.0.2.7/ipp/print',
      '192.0.2.9:6101',
      'labels-raw',
    ]);
  });
});
