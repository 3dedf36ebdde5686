/** `command-sheet.show`: the printed symbols with which the walk is driven by scanner alone. */
import { z } from 'zod';
import { commandSymbols } from '../../domain/command-symbol.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const commandSheet = defineOperation({
  name: 'command-sheet.show',
  summary: 'The sheet of command symbols for driving the walk by scanner alone, as PDF.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ paper: z.enum(['A4', 'Letter']).default('A4') }),
  output: z.object({ pdfBase64: z.string() }),
  run: async (_context, { paper }) => {
    const { renderCommandSheet } = await import('../../tags/command-sheet.ts');
    const sheet = await renderCommandSheet(commandSymbols, paper);
    return isRefusal(sheet) ? sheet : { pdfBase64: Buffer.from(sheet.pdf).toString('base64') };
  },
});
