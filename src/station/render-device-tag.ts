/** Renders the tag of a device, for the screen and for the printer. */
import { z } from 'zod';
import { type BenchId, benchIdSchema, millimetres } from '../domain/brand.ts';
import { programInForce } from '../domain/program-in-force.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { type TagContent, tagKindSchema } from '../domain/tag-content.ts';
import { tagFaceSchema } from '../domain/tag-face.ts';
import type { RenderedTag, TagOptions } from '../tags/render-tag.ts';
import { deviceIn, stationIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';
import { sealerOf } from './seal.ts';
import { tagOfDevice } from './tag-of-device.ts';
import { namesOf } from './views.ts';

const sideSchema = z.number().min(15).max(300).transform(millimetres);

export const tagRequestSchema = z.object({
  benchId: benchIdSchema,
  kind: tagKindSchema,
  /** Dots per inch of the picture and of the printer that the symbols are snapped to. */
  dpi: z.union([z.literal(203), z.literal(300), z.literal(600)]).default(300),
  /** Stock of the tag; the default stock of its kind where absent. */
  stock: z.object({ widthMm: sideSchema, heightMm: sideSchema }).optional(),
  /** Flat and without a hole where absent. */
  face: tagFaceSchema.optional(),
  ink: z.enum(['colour', 'monochrome']).default('colour'),
});
export type TagRequest = z.output<typeof tagRequestSchema>;

/**
 * On the stock that was asked for, or on the default stock of the kind; where the default stock is too small for all that
 * must be said, on the smallest that is large enough.
 */
export const renderDeviceTag = async (
  context: OperationContext,
  request: TagRequest,
): Promise<{ readonly content: TagContent; readonly rendered: RenderedTag } | Refusal> => {
  const content = await contentOf(context, request.benchId, request.kind);
  if (isRefusal(content)) return content;
  const { renderTag } = await import('../tags/render-tag.ts');
  const { stock } = request;
  const options = faceOptions(request);
  const first = await renderTag(content, { ...options, ...(stock === undefined ? {} : { stock }) });
  const larger = stock === undefined ? stockThatWouldDo(first) : undefined;
  const rendered = larger === undefined ? first : await renderTag(content, { ...options, stock: larger });
  return isRefusal(rendered) ? rendered : { content, rendered };
};

const faceOptions = ({ dpi, face, ink }: TagRequest): TagOptions => {
  const header = face?.preprintedHeaderMm;
  return {
    dpi,
    ink: header === undefined ? ink : 'pre-printed header',
    ...(header === undefined ? {} : { headerMm: header }),
    ...(face === undefined ? {} : { form: face.form }),
    ...(face?.hole === undefined ? {} : { hole: face.hole }),
  };
};

const stockThatWouldDo = (outcome: RenderedTag | Refusal): TagRequest['stock'] =>
  isRefusal(outcome) && outcome.code === 'tag-does-not-fit'
    ? {
        widthMm: millimetres(Number(outcome.values.widthMm)),
        heightMm: millimetres(Number(outcome.values.heightMm)),
      }
    : undefined;

const contentOf = async (
  { ledger, rules }: OperationContext,
  benchId: BenchId,
  kind: TagRequest['kind'],
): Promise<TagContent | Refusal> => {
  const station = await ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const sealer = await sealerOf(ledger, station);
  return ledger.read(async (reader) => {
    const row = await deviceIn(reader, benchId);
    if (isRefusal(row)) return row;
    return tagOfDevice(row, kind, {
      station,
      program: programInForce(station, rules.shipped).program,
      releaseRules: rules.release,
      name: await namesOf(reader),
      sealer,
    });
  });
};
