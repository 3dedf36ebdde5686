/** `bin-label.show`: the label of a place where held devices are kept, as PDF and picture. */
import { z } from 'zod';
import { millimetres } from '../../domain/brand.ts';
import { messageSchema } from '../../domain/message.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { binLabelSchema } from '../../domain/tag-content.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

const side = z.number().min(15).max(300).transform(millimetres);

export const binLabel = defineOperation({
  name: 'bin-label.show',
  summary: 'The label of a place where held devices are kept.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    code: binLabelSchema.shape.code,
    /** The quarantine place of the program where absent. */
    place: messageSchema.optional(),
    stock: z.object({ widthMm: side, heightMm: side }).optional(),
  }),
  output: z.object({
    pdfBase64: z.string(),
    pngBase64: z.string(),
    widthMm: z.number(),
    heightMm: z.number(),
  }),
  run: async ({ ledger, rules }, { code, place, stock }) => {
    const station = await ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const { quarantinePlace, tagLanguages } = programInForce(station, rules.shipped).program;
    const { renderTag } = await import('../../tags/render-tag.ts');
    const label = await renderTag(
      {
        kind: 'bin',
        code,
        place: place ?? quarantinePlace,
        station: station.name,
        languages: [...tagLanguages],
      },
      stock === undefined ? {} : { stock },
    );
    if (isRefusal(label)) return label;
    const { pdf, png, widthMm, heightMm } = label;
    return {
      pdfBase64: Buffer.from(pdf).toString('base64'),
      pngBase64: Buffer.from(png).toString('base64'),
      widthMm,
      heightMm,
    };
  },
});
