/** Where the label of each zone stands beside the drawing, and the point on the part that its leader touches. */
import type { Zone } from '../../src/domain/procedure.ts';

export const drawingWidth = 440;
export const drawingHeight = 944;

export interface Callout {
  /** On the part, in drawing units. */
  readonly point: readonly [x: number, y: number];
  /** Middle of the label's left edge, in drawing units. */
  readonly label: readonly [x: number, y: number];
}

export const callouts: Record<Zone, Callout> = {
  marking: { point: [201, 411], label: [0, 486] },
  history: { point: [72, 196], label: [0, 258] },
  'upper-hook': { point: [210, 128], label: [-14, 190] },
  housing: { point: [152, 390], label: [0, 486] },
  fasteners: { point: [173, 419], label: [0, 486] },
  indicator: { point: [236, 787], label: [0, 787] },
  'lower-hook': { point: [208, 872], label: [-14, 806] },
  termination: { point: [226, 704], label: [0, 690] },
  lifeline: { point: [244, 575], label: [0, 575] },
  retraction: { point: [205, 566], label: [0, 610] },
  brake: { point: [206, 348], label: [0, 486] },
  'whole-device': { point: [214, 463], label: [0, 530] },
};
