/** The card for the bench: one page, read back by other readers, legible, and in the order of the inspection. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { afterAll, describe, expect, test } from 'vitest';
import { benchCardOf } from '../../src/domain/bench-card.ts';
import { commandSymbols } from '../../src/domain/command-symbol.ts';
import type { Language } from '../../src/domain/message.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { layOutBenchCard, renderBenchCard } from '../../src/tags/bench-card.ts';
import { type Paper, papers } from '../../src/tags/paper.ts';
import { textsOf } from '../../src/typesetting/primitive.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { procedure } from '../support/shipped-rules.ts';
import { expectSound } from './sound-layout.ts';

const folder = mkdtempSync(join(tmpdir(), 'bench-card-'));
afterAll(() => rmSync(folder, { recursive: true }));

const card = benchCardOf(procedure);
const choices: readonly (readonly [Paper, readonly Language[]])[] = (['A4', 'Letter'] as const).flatMap(
  (paper) =>
    [['en'] as const, ['es'] as const, ['en', 'es'] as const].map((languages) => [paper, languages] as const),
);

const hasReaders = requireTool('zbarimg') && requireTool('pdftoppm');

describe.each(choices)('the bench card on %s in %s', (paper, languages) => {
  test('stands on one page, nothing over anything else, in letters that can be read from where they are', () => {
    const layout = layOutBenchCard(card, commandSymbols, papers[paper], languages);
    if (isRefusal(layout)) throw new Error(layout.code);
    expectSound(layout);
    // Capitals are 0.668 of the em (OS/2 table of the typeface). 1/300 of 700 mm and of 500 mm (ANSI Z535.2 §9.2.3).
    for (const { text, role, sizeMm } of textsOf(layout))
      expect(sizeMm * 0.668, text).toBeGreaterThanOrEqual((role === 'report' ? 500 : 700) / 300 - 0.001);
  });
});

/** The fullest card on each paper. */
test.runIf(hasReaders).each(['A4', 'Letter'] as const)(
  'the bench card in both languages on %s gives every command to zbar, from the page as poppler draws it',
  async (paper) => {
    const rendered = await renderBenchCard(card, commandSymbols, paper, ['en', 'es']);
    if (isRefusal(rendered)) throw new Error(JSON.stringify(rendered));
    expect((await PDFDocument.load(rendered.pdf)).getPageCount()).toBe(1);
    const at = join(folder, paper);
    writeFileSync(`${at}.pdf`, rendered.pdf);
    runTool('pdftoppm', ['-r', '300', '-png', '-singlefile', `${at}.pdf`, at]);
    const read = runTool('zbarimg', ['--raw', '-q', `${at}.png`])
      .trim()
      .split('\n');
    expect(read.sort()).toEqual(commandSymbols.map(({ text }) => text).sort());
  },
);

test('the card names every check once, in the order of the procedure, and every caution of it', () => {
  const lines = card.steps.map(({ checks }) => checks.en);
  const names = procedure.checks.map(({ title }) => title.en.split(': ').at(-1)!);
  let at = 0;
  const whole = lines.join(' · ');
  for (const name of names) {
    const found = whole.indexOf(name, at);
    expect(found, name).toBeGreaterThanOrEqual(at);
    at = found + 1;
  }
  const said = new Set(
    [...card.cautions, ...card.steps.flatMap(({ cautions }) => cautions)].map(({ es }) => es),
  );
  for (const { caution } of procedure.checks) if (caution !== undefined) expect(said).toContain(caution.es);
});

test('a card that would need smaller letters is refused, with the paper and what to do', async () => {
  const longer = { ...card, steps: [...card.steps, ...card.steps, ...card.steps] };
  expect(await renderBenchCard(longer, commandSymbols, 'Letter', ['en', 'es'])).toMatchObject({
    refused: true,
    code: 'bench-card-does-not-fit',
    values: { paper: 'Letter' },
  });
});
