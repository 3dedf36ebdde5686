/** Pictures of what was seen at a check: kept during the walk, upright, under their hash, and held against it later. */
import { createHash } from 'node:crypto';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');
const plain = (colour: string) =>
  sharp({ create: { width: 40, height: 30, channels: 3, background: colour } })
    .png()
    .toBuffer();

const openInspection = async () => {
  const station = await stationWithDevice();
  const { inspection } = await station.expectOutput('inspection.start', { benchId: station.benchId });
  return { ...station, inspection: inspection.inspection };
};

const shape = 'lifeline.shape';

describe('a picture of what was seen at a check', () => {
  test('is kept with the inspection and the check, and shown with the day and the person', async () => {
    const { expectOutput, inspection, folder, benchId } = await openInspection();
    const before = await expectOutput('evidence.summary', {});
    const pictureBase64 = base64(await plain('#3a6'));
    const { picture } = await expectOutput('inspection.keep-picture', {
      inspection,
      check: shape,
      pictureBase64,
    });
    const bytes = await readFile(join(folder, 'evidence', `${picture.sha256}.jpg`));
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(picture.sha256);
    expect(picture).toMatchObject({ check: shape, byteLength: bytes.length, width: 40, height: 30 });
    const { pictures } = await expectOutput('inspection.pictures', { inspection });
    expect(pictures).toMatchObject([
      { ...picture, keptOn: '2026-03-10', keptBy: 'Teo Arandal', state: 'kept' },
    ]);
    const listed = await expectOutput('evidence.list', { benchId });
    expect(listed.pictures).toMatchObject([
      { with: 'inspection', inspection, check: shape, sha256: picture.sha256, state: 'kept' },
    ]);
    expect(await expectOutput('evidence.summary', {})).toEqual({
      count: before.count + 1,
      bytes: before.bytes + bytes.length,
    });
  });

  test('may be of a marking element, and each check has its own', async () => {
    const { expectOutput, inspection } = await openInspection();
    for (const [check, colour] of [
      ['marking.serialNumber', '#a33'],
      [shape, '#33a'],
    ] as const)
      await expectOutput('inspection.keep-picture', {
        inspection,
        check,
        pictureBase64: base64(await plain(colour)),
      });
    const { pictures } = await expectOutput('inspection.pictures', {
      inspection,
      check: 'marking.serialNumber',
    });
    expect(pictures.map(({ check }) => check)).toEqual(['marking.serialNumber']);
  });

  test('stays with its inspection after the signature, when no further one is taken', async () => {
    const station = await stationWithDevice();
    const { expectOutput, expectError, benchId } = station;
    const { inspection } = await walk(station, benchId);
    const pictureBase64 = base64(await plain('#3a6'));
    await expectOutput('inspection.keep-picture', { inspection, check: shape, pictureBase64 });
    await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    const late = { inspection, check: shape, pictureBase64: base64(await plain('#000')) };
    expect(await expectError('inspection.keep-picture', late)).toMatchObject({ code: 'inspection-not-open' });
    expect((await expectOutput('inspection.pictures', { inspection })).pictures).toHaveLength(1);
  });

  test('is kept once, however often the same one is given for the same check', async () => {
    const { expectOutput, inspection } = await openInspection();
    const given = { inspection, check: shape, pictureBase64: base64(await plain('#3a6')) };
    const first = await expectOutput('inspection.keep-picture', given);
    expect(await expectOutput('inspection.keep-picture', given)).toEqual(first);
    expect((await expectOutput('inspection.pictures', { inspection })).pictures).toHaveLength(1);
  });

  test('is refused for a check that does not exist, an inspection that does not, and bytes that are none', async () => {
    const { expectError, inspection } = await openInspection();
    const pictureBase64 = base64(await plain('#3a6'));
    const refusals = [
      [{ inspection, check: 'housing.colour', pictureBase64 }, 'check-unknown'],
      [{ inspection: inspection + 1, check: shape, pictureBase64 }, 'inspection-unknown'],
      [{ inspection, check: shape, pictureBase64: base64(Buffer.from('no picture')) }, 'image-unreadable'],
    ] as const;
    for (const [given, code] of refusals)
      expect(await expectError('inspection.keep-picture', given)).toMatchObject({ code });
  });

  test('is refused beyond two dozen of one check', async () => {
    const { expectOutput, expectError, inspection } = await openInspection();
    const given = async (shade: number) => ({
      inspection,
      check: shape,
      pictureBase64: base64(await plain(`rgb(${shade * 10}, 0, 0)`)),
    });
    for (let shade = 0; shade < 24; shade += 1)
      await expectOutput('inspection.keep-picture', await given(shade));
    expect(await expectError('inspection.keep-picture', await given(24))).toMatchObject({
      code: 'pictures-too-many',
    });
  });
});

/**
 * Which side of the upright picture the first row and the first column of the stored one are, for each orientation: Exif
 * 2.32 (CIPA DC-008), tag 274.
 */
const orientations = [
  [1, 'top', 'left'],
  [2, 'top', 'right'],
  [3, 'bottom', 'right'],
  [4, 'bottom', 'left'],
  [5, 'left', 'top'],
  [6, 'right', 'top'],
  [7, 'right', 'bottom'],
  [8, 'left', 'bottom'],
] as const;
type Side = (typeof orientations)[number][1] | (typeof orientations)[number][2];

const [width, height] = [48, 32];
/** Red, green, blue and white quarters, read as a page: no turn or flip of it looks like another. */
const quarters = [
  [220, 20, 20],
  [20, 200, 20],
  [20, 20, 220],
  [240, 240, 240],
] as const;
const colourAt = (x: number, y: number) => quarters[(y < height / 2 ? 0 : 2) + (x < width / 2 ? 0 : 1)]!;

/** The stored picture, dot by dot, from the two sides. */
const storedAs = (row: Side, column: Side) => {
  const isTurned = row === 'left' || row === 'right';
  const stored = isTurned ? { width: height, height: width } : { width, height };
  const along = (side: Side, index: number) => {
    const span = side === 'left' || side === 'right' ? width : height;
    return side === 'right' || side === 'bottom' ? span - 1 - index : index;
  };
  const raw = Buffer.alloc(width * height * 3);
  for (let r = 0; r < stored.height; r += 1) {
    for (let c = 0; c < stored.width; c += 1) {
      const x = isTurned ? along(row, r) : along(column, c);
      const y = isTurned ? along(column, c) : along(row, r);
      raw.set(colourAt(x, y), (r * stored.width + c) * 3);
    }
  }
  return sharp(raw, { raw: { ...stored, channels: 3 } });
};

describe('the orientation that a camera wrote', () => {
  test.each(orientations)(
    '%i is turned upright, and is gone from the file',
    async (orientation, row, column) => {
      const { expectOutput, inspection, folder } = await openInspection();
      const photograph = await storedAs(row, column)
        .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 3230/100' } })
        .withMetadata({ orientation })
        .jpeg({ quality: 98, chromaSubsampling: '4:4:4' })
        .toBuffer();
      expect((await sharp(photograph).metadata()).orientation).toBe(orientation);
      const { picture } = await expectOutput('inspection.keep-picture', {
        inspection,
        check: shape,
        pictureBase64: base64(photograph),
      });
      expect([picture.width, picture.height]).toEqual([width, height]);
      const file = sharp(await readFile(join(folder, 'evidence', `${picture.sha256}.jpg`)));
      const metadata = await file.metadata();
      expect([metadata.orientation, metadata.exif, metadata.xmp]).toEqual([undefined, undefined, undefined]);
      const { data } = await file.raw().toBuffer({ resolveWithObject: true });
      for (const [x, y] of [
        [12, 8],
        [36, 8],
        [12, 24],
        [36, 24],
      ] as const) {
        const at = (y * width + x) * 3;
        colourAt(x, y).forEach((value, channel) => {
          expect(Math.abs(data[at + channel]! - value)).toBeLessThan(40);
        });
      }
    },
  );
});

describe('verification of the pictures of findings', () => {
  const withPicture = async () => {
    const station = await openInspection();
    const { picture } = await station.expectOutput('inspection.keep-picture', {
      inspection: station.inspection,
      check: shape,
      pictureBase64: base64(await plain('#3a6')),
    });
    return { ...station, picture, file: join(station.folder, 'evidence', `${picture.sha256}.jpg`) };
  };

  test('names one that is missing, and the inspection still shows that there was one', async () => {
    const { file, expectOutput, inspection, picture } = await withPicture();
    await rm(file);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({
      sound: false,
      faults: [{ kind: 'picture missing', sha256: picture.sha256 }],
    });
    expect((await expectOutput('inspection.pictures', { inspection })).pictures).toMatchObject([
      { state: 'missing' },
    ]);
  });

  test('names one of which a single bit was changed', async () => {
    const { file, expectOutput, picture } = await withPicture();
    const bytes = await readFile(file);
    bytes[bytes.length >> 1]! ^= 1;
    await writeFile(file, bytes);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({
      sound: false,
      faults: [{ kind: 'picture changed', sha256: picture.sha256 }],
    });
  });

  test('notes a file that no event names, and calls the record sound', async () => {
    const { folder, expectOutput } = await withPicture();
    const stray = Buffer.from('left by a write that was cut off');
    const sha256 = createHash('sha256').update(stray).digest('hex');
    await writeFile(join(folder, 'evidence', `${sha256}.jpg`), stray);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({
      sound: true,
      faults: [],
      notes: [{ kind: 'picture not in the record', sha256 }],
    });
  });
});
