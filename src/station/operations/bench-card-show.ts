/** `bench-card.show`: one page for the bench, with the cautions, the order of the inspection, and the command symbols. */
import { z } from 'zod';
import { benchCardOf } from '../../domain/bench-card.ts';
import { commandSymbols } from '../../domain/command-symbol.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

const languagesOf = { en: ['en'], es: ['es'], both: ['en', 'es'] } as const;

export const benchCardShow = defineOperation({
  name: 'bench-card.show',
  summary: 'The card for the bench: cautions, the order of the inspection, and the command symbols, as PDF.',
  kind: 'query',
  access: 'anyone',
  input: z.object({
    paper: z.enum(['A4', 'Letter']).default('A4'),
    languages: z.enum(['en', 'es', 'both']).default('both'),
  }),
  output: z.object({ pdfBase64: z.string() }),
  run: async ({ rules }, { paper, languages }) => {
    const { renderBenchCard } = await import('../../tags/bench-card.ts');
    const card = benchCardOf(rules.current.procedure);
    const rendered = await renderBenchCard(card, commandSymbols, paper, languagesOf[languages]);
    return isRefusal(rendered) ? rendered : { pdfBase64: Buffer.from(rendered.pdf).toString('base64') };
  },
});
