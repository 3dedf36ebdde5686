/** Small line drawings of the zones of a device, and the alert triangle. */
import drawings from '../../assets/drawings/zone-pictograms.json' with { type: 'json' };
import type { Zone } from '../domain/procedure.ts';
import type { Primitive } from '../typesetting/primitive.ts';

/** Units along the side of the square in which a pictogram is drawn. */
const side = 24;
const lineUnits = 1.9;

const zoneDrawings: Record<Zone, string> = drawings;

export const zonePictogram = (zone: Zone, xMm: number, yMm: number, sizeMm: number): Primitive => ({
  kind: 'path',
  data: zoneDrawings[zone],
  xMm,
  yMm,
  unitMm: sizeMm / side,
  colour: 'black',
  strokeUnits: lineUnits,
});

/** Height of the alert triangle over its width. */
export const alertTriangleRatio = 0.88;

/** A white triangle with a red exclamation mark, for a red ground. */
export const alertTriangle = (xMm: number, yMm: number, widthMm: number): readonly Primitive[] => {
  const place = { kind: 'path', xMm, yMm, unitMm: widthMm / side } as const;
  return [
    {
      ...place,
      colour: 'white',
      data: 'M10.6,1Q12,-0.6,13.4,1L23.6,18.6Q24.4,20.8,22.2,21.1H1.8Q-0.4,20.8,0.4,18.6Z',
    },
    {
      ...place,
      colour: 'red',
      data: 'M10.3,6.2H13.7L13.2,13.8H10.8Z M12,15.2A1.75,1.75,0,1,1,11.99,15.2Z',
    },
  ];
};
