import { beforeAll, expect, test } from 'vitest';
import { prepareDecodersInNode } from '../../../src/tags/read/node-decoders.ts';
import { readWornTag } from '../../../src/tags/read/read-worn-tag.ts';
import { twoTags } from './two-tags.ts';

beforeAll(prepareDecodersInNode);

test.each([
  ['a whole one over one that no general decoder reads', 7, 'used', 'C'],
  ['one that no general decoder reads over a whole one', 8, 'C', 'used'],
  ['two that no general decoder reads', 18, 'C', 'C'],
  ['the clearest of what is left is the QR Code of the second', 1_000_105, 'C', 'C'],
  ['the bars of the one that is read are not among the clearest places', 3_007, 'B', 'B'],
] as const)(
  'two tags are said to be several: %s',
  async (_name, index, upper, lower) => {
    const { picture, benchIds } = await twoTags(index, upper, lower);
    const reading = await readWornTag(picture, { budgetMs: 60_000 });
    expect(reading.kind).toBe('several tags');
    if (reading.kind === 'several tags')
      expect(benchIds).toEqual(expect.arrayContaining([...reading.benchIds]));
  },
  120_000,
);
