/** The request to a manufacturer for replacement markings: which devices, and which elements of each. */
import { z } from 'zod';
import { benchIdSchema } from './brand.ts';
import { presumedReasonKey } from './decide/identity.ts';
import type { Device } from './device.ts';
import { type MarkingElement, markingElementSchema, markingElements } from './marking.ts';
import type { ModelSheet } from './model-sheet.ts';

export const markingRequestSchema = z.object({
  manufacturer: z.string(),
  devices: z.array(
    z.object({
      benchId: benchIdSchema,
      model: z.string(),
      /** As far as it is known; empty where it is not. */
      serial: z.string(),
      /** Nothing but two people's word says that this is the device with that serial number. */
      presumed: z.boolean(),
      dateOfManufacture: z.string(),
      /** In the order of the marking. */
      elements: z.array(markingElementSchema).min(1),
    }),
  ),
});
export type MarkingRequest = z.infer<typeof markingRequestSchema>;

/** Devices that are out of service for their marking, by manufacturer, both in the order given. */
export const markingRequestsOf = (
  held: readonly { readonly device: Device; readonly modelSheet: ModelSheet }[],
): MarkingRequest[] => {
  const requests = new Map<string, MarkingRequest>();
  for (const { device, modelSheet } of held) {
    const elements = neededElements(device);
    if (elements.length === 0) continue;
    const { manufacturer } = modelSheet;
    const request = requests.get(manufacturer) ?? { manufacturer, devices: [] };
    requests.set(manufacturer, request);
    request.devices.push({
      benchId: device.benchId,
      model: modelSheet.model,
      serial: device.serial,
      presumed: device.presumedIdentity !== undefined,
      dateOfManufacture: device.dateOfManufacture,
      elements,
    });
  }
  return [...requests.values()];
};

/** Grounds that say that the marking is lost, but not which part of it: all of it is asked for. */
const wholeMarkingKeys: ReadonlySet<string> = new Set(['removal.marking', presumedReasonKey]);

const neededElements = ({ reasons }: Device): MarkingElement[] => {
  if (reasons.some(({ key }) => wholeMarkingKeys.has(key))) return [...markingElements];
  const keys = new Set(reasons.map(({ key }) => key));
  return markingElements.filter(
    (element) => keys.has(`marking.${element}.illegible`) || keys.has(`marking.${element}.missing`),
  );
};
