/** `scanner.symbol`: the symbol that a scanner is learnt from, for the screen and for paper. */
import { z } from 'zod';
import { learningText } from '../../domain/scanner/learn-scanner.ts';
import { defineOperation } from '../operation.ts';

export const scannerSymbol = defineOperation({
  name: 'scanner.symbol',
  summary: 'The symbol that a scanner is learnt from.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({ text: z.string(), pngBase64: z.string(), pdfBase64: z.string() }),
  run: async () => {
    const { renderPlainSymbol } = await import('../../tags/plain-symbol.ts');
    const { png, pdf } = await renderPlainSymbol(learningText);
    return {
      text: learningText,
      pngBase64: png.toString('base64'),
      pdfBase64: Buffer.from(pdf).toString('base64'),
    };
  },
});
