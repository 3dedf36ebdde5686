import { describe, expect, test } from 'vitest';
import { parseBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { readSymbols } from '../../../src/tags/read/read-symbols.ts';
import { fleet, fleetSize, statusTagOf } from './fleet.ts';
import { judgeTexts } from './judge.ts';
import { kindOfOther, otherPicture, otherPictureKinds } from './other-pictures.ts';
import { peers } from './peers.ts';
import { twoTags } from './two-tags.ts';
import { pngOf, wornIdLabel, wornTag } from './worn-tag.ts';

describe('the fleet of the benchmark', () => {
  test('has 2,000 devices, each with a bench ID of its own that is a codeword', () => {
    expect(fleetSize).toBe(2000);
    expect(new Set(fleet).size).toBe(2000);
    expect(fleet.every((benchId) => parseBenchId(benchId).kind === 'exact')).toBe(true);
    expect(statusTagOf(fleet[17]!)).toEqual(statusTagOf(fleet[17]!));
  });
});

describe('pictures of tags', () => {
  test('that are fresh are read by general decoders, both symbols of the status tag and the ID label', async () => {
    const status = await wornTag(21, 'fresh');
    expect(status.benchId).toBe(fleet[21]);
    for (const peer of ['@zxing/library', 'zxing-cpp', 'zbar', 'jsQR'] as const)
      expect(judgeTexts(await peers[peer](status.picture), [status.benchId])).toEqual({
        right: true,
        wrong: false,
      });
    const label = await wornIdLabel(21, 'fresh');
    expect(await peers['zxing-cpp'](label.picture)).toEqual([fleet[21]]);
  });

  test('of two tags hold both', async () => {
    const { picture, benchIds } = await twoTags(5, 'fresh');
    expect(benchIds[0]).not.toBe(benchIds[1]);
    const texts = await peers['zxing-cpp'](picture);
    for (const benchId of benchIds) expect(judgeTexts(texts, [benchId]).right).toBe(true);
  });
});

/** What a decoder finds in the clean pictures; the others hold no symbol. */
const symbologies: Readonly<Record<string, readonly string[]>> = {
  'EAN-13': ['EAN13'],
  'Code 39': ['Code39'],
  ITF: ['ITF'],
  'Code 128': ['Code 128'],
  'Code 128 of ten characters': ['Code 128'],
  'QR Code': ['QR Code'],
  'Data Matrix': ['Data Matrix'],
  'imitated tag': ['Code 128', 'QR Code'],
  'bin label': ['Code 128', 'Data Matrix'],
};

describe('pictures without a tag of ours', () => {
  test.each(otherPictureKinds.map((kind, index) => [kind, index] as const))(
    '%s holds what it says and no bench ID',
    async (kind, index) => {
      expect(kindOfOther(index)).toBe(kind);
      const picture = await otherPicture(index);
      const found = await readSymbols(await pngOf(picture));
      if ('refused' in found) throw new Error(found.code);
      expect(found.map(({ symbology }) => symbology).sort()).toEqual(symbologies[kind] ?? []);
      for (const { text } of found) expect(parseBenchId(text).kind).not.toBe('exact');
    },
  );
});
