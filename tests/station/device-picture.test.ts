/** Pictures that are kept with the record of a device, through the contract. */
import { createHash } from 'node:crypto';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { demo } from '../support/station-fixture.ts';
import { stationWithDevice } from './sample-device.ts';

/** The left half red, the right half blue. */
const redAndBlue = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#0000ff' } }).composite([
    {
      input: { create: { width: width / 2, height, channels: 3, background: '#ff0000' } },
      left: 0,
      top: 0,
    },
  ]);

/** Two drawn pictures of findings come with the invented depot. */
const drawnPictures = 2;

/** The pictures that lie in the data folder. */
const filesOf = async (folder: string) => (await readdir(join(folder, 'evidence'))).sort();

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

const kept = async (width = 400, height = 200) => {
  const station = await stationWithDevice();
  const { benchId } = station;
  const pictureBase64 = base64(await redAndBlue(width, height).png().toBuffer());
  const { picture } = await station.expectOutput('device.keep-picture', {
    benchId,
    of: 'marking',
    pictureBase64,
  });
  const file = join(station.folder, 'evidence', `${picture.sha256}.jpg`);
  return { ...station, picture, pictureBase64, file };
};

describe('a picture that is kept', () => {
  test('lies in the data folder under its hash, and the record names it with its size, day and person', async () => {
    const { picture, file, expectOutput, benchId } = await kept();
    const bytes = await readFile(file);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(picture.sha256);
    expect(picture).toEqual({
      of: 'marking',
      sha256: picture.sha256,
      mediaType: 'image/jpeg',
      byteLength: bytes.length,
      width: 400,
      height: 200,
    });
    const { pictures, total } = await expectOutput('device.pictures', { benchId });
    expect(total).toBe(1);
    expect(pictures).toEqual([
      {
        ...picture,
        keptOn: '2026-03-10',
        keptBy: 'Teo Arandal',
        state: 'kept',
        thumbnailBase64: expect.any(String),
      },
    ]);
    const thumbnail = await sharp(Buffer.from(pictures[0]!.thumbnailBase64!, 'base64')).metadata();
    expect([thumbnail.format, thumbnail.width, thumbnail.height]).toEqual(['jpeg', 320, 160]);
    const shown = await expectOutput('picture.show', { sha256: picture.sha256 });
    expect(Buffer.from(shown.pictureBase64, 'base64')).toEqual(bytes);
  });

  test('is upright, and says nothing of the person, the camera and the place', async () => {
    const { expectOutput, benchId, folder } = await stationWithDevice();
    const photograph = await redAndBlue(60, 40)
      .withExif({
        IFD0: { Artist: 'Jonas Veld', Model: 'Phone 7' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 3230/100' },
      })
      .withMetadata({ orientation: 6 })
      .jpeg({ quality: 95 })
      .toBuffer();
    expect((await sharp(photograph).metadata()).orientation).toBe(6);
    const { picture } = await expectOutput('device.keep-picture', {
      benchId,
      of: 'tag',
      pictureBase64: base64(photograph),
    });
    expect([picture.width, picture.height]).toEqual([40, 60]);
    const file = await readFile(join(folder, 'evidence', `${picture.sha256}.jpg`));
    const { orientation, exif, xmp, iptc, icc } = await sharp(file).metadata();
    expect([orientation, exif, xmp, iptc, icc]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(file.includes('Jonas') || file.includes('Phone')).toBe(false);
    // Orientation 6 (Exif 2.32, tag 274): the left of the stored picture is the top of the upright one.
    const { data } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
    const [red, , blue] = data.subarray(3 * 20, 3 * 20 + 3);
    expect(red! > 200 && blue! < 60).toBe(true);
  });

  test('is no larger than 4,096 dots a side', async () => {
    const { picture } = await kept(5000, 1000);
    expect([picture.width, picture.height]).toEqual([4096, 819]);
  });

  test('is kept once, however often the same one is given for the same device', async () => {
    const { expectOutput, benchId, pictureBase64, folder, picture } = await kept();
    const again = await expectOutput('device.keep-picture', { benchId, of: 'marking', pictureBase64 });
    expect(again.picture).toEqual(picture);
    expect((await expectOutput('device.pictures', { benchId })).total).toBe(1);
    await expectOutput('device.keep-picture', { benchId, of: 'tag', pictureBase64 });
    expect((await expectOutput('device.pictures', { benchId })).pictures.map(({ of }) => of)).toEqual([
      'tag',
      'marking',
    ]);
    const files = await filesOf(folder);
    expect(files.filter((name) => name.startsWith(picture.sha256))).toHaveLength(1);
    expect(files).toHaveLength(1 + drawnPictures);
  });

  test('outlives a restart, and a rebuilding of everything that is derived from the record', async () => {
    const station = await kept();
    const again = await station.reopen();
    await again.expectOutput('session.sign-in', { badge: demo.administrator });
    await again.expectOutput('ledger.rebuild', {});
    const { pictures } = await again.expectOutput('device.pictures', { benchId: station.benchId });
    expect(pictures).toMatchObject([{ sha256: station.picture.sha256, state: 'kept' }]);
    expect(await again.expectOutput('ledger.verify', {})).toMatchObject({ sound: true, faults: [] });
  });
});

describe('a kept picture whose file was changed', () => {
  test('is named so on the card, is not shown, and the record does not prove sound', async () => {
    const { file, expectOutput, expectError, benchId, picture } = await kept();
    const bytes = await readFile(file);
    bytes[bytes.length >> 1]! ^= 1;
    await writeFile(file, bytes);
    const { pictures } = await expectOutput('device.pictures', { benchId });
    expect(pictures).toMatchObject([{ state: 'changed' }]);
    expect(pictures[0]).not.toHaveProperty('thumbnailBase64');
    const error = await expectError('picture.show', { sha256: picture.sha256 });
    expect(error).toMatchObject({ code: 'picture-changed' });
    expect(error.sentence).toContain('is not what was kept');
    const { sound, faults } = await expectOutput('ledger.verify', {});
    expect(sound).toBe(false);
    expect(faults).toEqual([{ kind: 'picture changed', seq: expect.any(Number), sha256: picture.sha256 }]);
  });

  test('or taken away is named as missing', async () => {
    const { file, expectOutput, expectError, benchId, picture } = await kept();
    await rm(file);
    expect((await expectOutput('device.pictures', { benchId })).pictures).toMatchObject([
      { state: 'missing' },
    ]);
    expect(await expectError('picture.show', { sha256: picture.sha256 })).toMatchObject({
      code: 'picture-missing',
    });
    expect(await expectOutput('ledger.verify', {})).toMatchObject({
      sound: false,
      faults: [{ kind: 'picture missing', sha256: picture.sha256 }],
    });
  });
});

describe('no picture is kept', () => {
  test('of bytes that are none, that are cut off, or of another format', async () => {
    const { expectError, expectOutput, benchId, folder } = await stationWithDevice();
    const before = await filesOf(folder);
    const png = await redAndBlue(400, 200).png().toBuffer();
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
    const gif = await redAndBlue(8, 8).gif().toBuffer();
    for (const bytes of [
      Buffer.alloc(0),
      Buffer.from('no picture'),
      png.subarray(0, png.length / 2),
      svg,
      gif,
    ]) {
      const given = { benchId, of: 'marking', pictureBase64: base64(bytes) } as const;
      expect(await expectError('device.keep-picture', given)).toMatchObject({ code: 'image-unreadable' });
    }
    expect((await expectOutput('device.pictures', { benchId })).total).toBe(0);
    expect(await filesOf(folder)).toEqual(before);
  });

  test('of a device that is not registered, by somebody who may not, or by nobody', async () => {
    const { expectError, expectOutput, callAs, benchId, folder } = await stationWithDevice();
    const before = await filesOf(folder);
    const pictureBase64 = base64(await redAndBlue(8, 8).png().toBuffer());
    const given = { benchId, of: 'marking', pictureBase64 } as const;
    const unknown = { ...given, benchId: benchIdFrom([1, 2, 3, 4, 5, 6]) };
    expect(await expectError('device.keep-picture', unknown)).toMatchObject({ code: 'device-unknown' });
    await expectOutput('session.sign-in', { badge: demo.user });
    expect(await expectError('device.keep-picture', given)).toMatchObject({ code: 'role-needed' });
    for (const call of [
      callAs('another window')('device.keep-picture', given),
      callAs('another window')('device.pictures', { benchId }),
      callAs('another window')('picture.show', { sha256: 'a'.repeat(64) }),
    ])
      expect(await call).toMatchObject({ ok: false, error: { code: 'sign-in-needed' } });
    expect(await filesOf(folder)).toEqual(before);
  });

  test('where the folder cannot be written, and no event says so', async () => {
    const { expectError, expectOutput, benchId, folder } = await stationWithDevice();
    await rm(join(folder, 'evidence'), { recursive: true });
    await writeFile(join(folder, 'evidence'), 'a file in its place');
    const before = (await expectOutput('ledger.verify', {})).head;
    const pictureBase64 = base64(await redAndBlue(8, 8).png().toBuffer());
    const error = await expectError('device.keep-picture', { benchId, of: 'marking', pictureBase64 });
    expect(error).toMatchObject({ code: 'folder-not-writable' });
    expect(error.sentence).toContain('Nothing was recorded');
    await rm(join(folder, 'evidence'));
    expect((await expectOutput('ledger.verify', {})).head).toEqual(before);
  });
});
