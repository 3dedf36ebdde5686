/** Strips on pages: whatever is set, nothing leaves the frame, no heading ends a page, and table heads come again. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flow } from '../../src/reports/flow.ts';
import { frameOf, papers } from '../../src/reports/paper.ts';
import { heading, prose } from '../../src/reports/prose.ts';
import type { Strip } from '../../src/reports/strip.ts';
import { cell, facts, table } from '../../src/reports/table.ts';
import { inkBoxOf, type PageMark, type Text } from '../../src/typesetting/primitive.ts';

const textsOn = (marks: readonly PageMark[]): readonly Text[] =>
  marks.filter((mark): mark is Text => mark.kind === 'text');
const wordsOn = (marks: readonly PageMark[]) => textsOn(marks).map(({ text }) => text);

const word = fc.string({ minLength: 1, maxLength: 90, unit: fc.constantFrom(...'abcdefghijWM1ñ-') });
const sentence = fc.array(word, { minLength: 1, maxLength: 60 }).map((words) => words.join(' '));

const stripOf = (widthMm: number): fc.Arbitrary<Strip> =>
  fc.oneof(
    word.map((text) => heading(`H ${text}`, widthMm)),
    sentence.map((text) => prose([text], widthMm)),
    fc.array(fc.tuple(word, sentence), { minLength: 1, maxLength: 12 }).map((pairs) => facts(pairs, widthMm)),
    fc.array(fc.tuple(sentence, sentence), { minLength: 1, maxLength: 60 }).map((rows) =>
      table(
        [
          { title: 'First', share: 1 },
          { title: 'Second', share: 2 },
        ],
        rows.map(([first, second]) => [cell(first), cell(second)]),
        widthMm,
      ),
    ),
  );

describe.each(papers)('on %s', (paper) => {
  const frame = frameOf(paper);
  const strips = fc.array(stripOf(frame.textWidthMm), { minLength: 1, maxLength: 25 });

  test('every mark stands within the frame, whatever the words are', async () => {
    await fc.assert(
      fc.asyncProperty(strips, async (set) => {
        for (const marks of await flow(set, frame)) {
          for (const mark of marks) {
            if (mark.kind !== 'text' && mark.kind !== 'rectangle') throw new Error(mark.kind);
            const box = mark.kind === 'text' ? inkBoxOf(mark) : mark;
            expect(box.xMm).toBeGreaterThanOrEqual(frame.leftMm - 0.5);
            expect(box.xMm + box.widthMm).toBeLessThanOrEqual(frame.rightMm + 0.5);
            expect(box.yMm).toBeGreaterThanOrEqual(frame.topMm - 0.5);
            expect(box.yMm + box.heightMm).toBeLessThanOrEqual(frame.bottomMm + 0.5);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('no word is lost and none is set twice but those of table heads', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(sentence, { minLength: 1, maxLength: 40 }), async (texts) => {
        const set = texts.map((text) => prose([text], frame.textWidthMm));
        const pages = await flow(set, frame);
        const letters = (all: readonly string[]) => all.join('').replace(/\s/g, '');
        expect(letters(pages.flatMap(wordsOn))).toBe(letters(texts));
      }),
      { numRuns: 40 },
    );
  });

  test('a heading is never the last on a page', async () => {
    await fc.assert(
      fc.asyncProperty(strips, async (set) => {
        const ended = [...set, prose(['The end.'], frame.textWidthMm)];
        for (const marks of await flow(ended, frame)) {
          const last = textsOn(marks).at(-1);
          expect(last?.role).not.toBe('heading');
        }
      }),
      { numRuns: 60 },
    );
  });

  test('the head of a table stands on each page on which the table goes on', async () => {
    const rows = Array.from({ length: 300 }, (_, row) => [cell(`Row ${row}`)]);
    const pages = await flow([table([{ title: 'Head', share: 1 }], rows, frame.textWidthMm)], frame);
    expect(pages.length).toBeGreaterThan(3);
    for (const marks of pages) expect(wordsOn(marks)[0]).toBe('Head');
    const set = pages.flatMap(wordsOn).filter((text) => text !== 'Head');
    expect(set).toEqual(rows.map((_, row) => `Row ${row}`));
  });
});

test('a work that was cancelled stops', async () => {
  const rows = Array.from({ length: 1000 }, (_, row) => [cell(`Row ${row}`)]);
  const controller = new AbortController();
  const frame = frameOf('a4');
  const set = flow([table([{ title: 'Head', share: 1 }], rows, 100)], frame, controller.signal);
  controller.abort(new Error('cancelled'));
  await expect(set).rejects.toThrow('cancelled');
});
