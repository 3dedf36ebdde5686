/**
 * How a camera sees a tag on a round housing: wrapped, tilted, turned, with what surrounds it.
 *
 * The tag lies on a cylinder whose axis runs along the bars, so its ends turn away from the camera. Every dot of the
 * photograph is traced back to the cylinder; where it meets the tag, the print is seen, elsewhere the housing or the bench.
 */
import { type Field, noiseField } from './field.ts';
import { type Print, reflectanceOf } from './print.ts';
import type { Random } from './random.ts';

export interface View {
  /** Dots of the photograph for each millimetre in the middle of the tag. */
  readonly dotsPerMm: number;
  /** Angle by which the end of the tag turns away from its middle; 0 is a flat tag. */
  readonly wrapDegrees: number;
  readonly pitchDegrees: number;
  readonly yawDegrees: number;
  readonly rollDegrees: number;
  /** Free room around the tag in the photograph. */
  readonly marginMm: number;
}

/** An arm's length less the forearm: how far a phone is held from a tag. Common practice, no source. */
export const cameraDistanceMm = 300;

type Vector = readonly [number, number, number];

/** The light that comes back from each dot, 0 to 1, under even light; and how far round the housing it lies, in millimetres. */
export interface Seen {
  readonly scene: Field;
  /** Along the tag from its middle; `NaN` where the bench is seen. */
  readonly alongMm: Float32Array;
}

export const seen = (print: Print, view: View, random: Random): Seen => {
  const widthMm = print.width / print.dotsPerMm;
  const heightMm = print.height / print.dotsPerMm;
  const wrap = Math.max(0.001, (view.wrapDegrees * Math.PI) / 180);
  const radiusMm = widthMm / 2 / wrap;
  const turn = rotation(view);
  const focal = view.dotsPerMm * cameraDistanceMm;

  const corners = outline(widthMm, heightMm, radiusMm).map((point) => projected(turn(point), focal));
  const margin = view.marginMm * view.dotsPerMm;
  const left = Math.min(...corners.map(([x]) => x)) - margin;
  const top = Math.min(...corners.map(([, y]) => y)) - margin;
  const width = Math.ceil(Math.max(...corners.map(([x]) => x)) + margin - left);
  const height = Math.ceil(Math.max(...corners.map(([, y]) => y)) + margin - top);

  const surroundings = surroundingsOf(width, height, view.dotsPerMm, random);
  const reflectance = reflectanceOf(print);
  const values = new Float32Array(width * height);
  const alongMm = new Float32Array(width * height).fill(Number.NaN);
  const back = inverse(turn);
  const eye = back([0, 0, -cameraDistanceMm]);
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const index = row * width + column;
      const ray = back([(column + left) / focal, (row + top) / focal, 1]);
      const met = onCylinder(eye, ray, radiusMm);
      if (met === undefined) {
        values[index] = surroundings.bench(index);
        continue;
      }
      const [x, y] = met;
      alongMm[index] = x;
      values[index] =
        sampled(
          print,
          reflectance,
          (x + widthMm / 2) * print.dotsPerMm,
          (y + heightMm / 2) * print.dotsPerMm,
        ) ?? surroundings.housing(index);
    }
  return { scene: { width, height, values }, alongMm };
};

const rotation = ({ pitchDegrees, yawDegrees, rollDegrees }: View): ((point: Vector) => Vector) => {
  const [pitch, yaw, roll] = [pitchDegrees, yawDegrees, rollDegrees].map(
    (angle) => (angle * Math.PI) / 180,
  ) as [number, number, number];
  return ([x, y, z]) => {
    const [y1, z1] = [y * Math.cos(pitch) - z * Math.sin(pitch), y * Math.sin(pitch) + z * Math.cos(pitch)];
    const [x2, z2] = [x * Math.cos(yaw) + z1 * Math.sin(yaw), -x * Math.sin(yaw) + z1 * Math.cos(yaw)];
    return [x2 * Math.cos(roll) - y1 * Math.sin(roll), x2 * Math.sin(roll) + y1 * Math.cos(roll), z2];
  };
};

/** A rotation is undone by its transpose, whose rows are the turned axes. */
const inverse = (turn: (point: Vector) => Vector): ((point: Vector) => Vector) => {
  const axes = [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])] as const;
  const along = (axis: Vector, point: Vector): number =>
    axis[0] * point[0] + axis[1] * point[1] + axis[2] * point[2];
  return (point) => [along(axes[0], point), along(axes[1], point), along(axes[2], point)];
};

const projected = ([x, y, z]: Vector, focal: number): readonly [number, number] => [
  (x * focal) / (z + cameraDistanceMm),
  (y * focal) / (z + cameraDistanceMm),
];

const outline = (widthMm: number, heightMm: number, radiusMm: number): readonly Vector[] =>
  [-1, -0.5, 0, 0.5, 1].flatMap((share) =>
    [-heightMm / 2, heightMm / 2].map((y): Vector => {
      const angle = (share * widthMm) / 2 / radiusMm;
      return [radiusMm * Math.sin(angle), y, radiusMm * (1 - Math.cos(angle))];
    }),
  );

/** Where the ray meets the near side: along the arc and along the axis, from the middle of the tag. */
const onCylinder = (eye: Vector, ray: Vector, radiusMm: number): readonly [number, number] | undefined => {
  const a = ray[0] ** 2 + ray[2] ** 2;
  const b = eye[0] * ray[0] + (eye[2] - radiusMm) * ray[2];
  const c = eye[0] ** 2 + (eye[2] - radiusMm) ** 2 - radiusMm ** 2;
  const root = b * b - a * c;
  if (root < 0) return undefined;
  const t = (-b - Math.sqrt(root)) / a;
  const x = eye[0] + t * ray[0];
  const z = eye[2] + t * ray[2];
  return [radiusMm * Math.atan2(x, radiusMm - z), eye[1] + t * ray[1]];
};

/** Between the four nearest dots; `undefined` off the tag and where it is torn away. */
const sampled = (
  { width, height, whole }: Print,
  reflectance: Float32Array,
  x: number,
  y: number,
): number | undefined => {
  const column = Math.floor(x - 0.5);
  const row = Math.floor(y - 0.5);
  if (column < 0 || row < 0 || column >= width - 1 || row >= height - 1) return undefined;
  const at = row * width + column;
  if (whole[at] === 0) return undefined;
  const across = x - 0.5 - column;
  const down = y - 0.5 - row;
  const above = (reflectance[at] ?? 0) * (1 - across) + (reflectance[at + 1] ?? 0) * across;
  const below = (reflectance[at + width] ?? 0) * (1 - across) + (reflectance[at + width + 1] ?? 0) * across;
  return above * (1 - down) + below * down;
};

interface Surroundings {
  readonly housing: (index: number) => number;
  readonly bench: (index: number) => number;
}

/** Painted metal and a dark bench, both rough. */
const surroundingsOf = (width: number, height: number, dotsPerMm: number, random: Random): Surroundings => {
  const paint = random.between(0.2, 0.6);
  const wood = random.between(0.05, 0.3);
  const coarse = noiseField(width, height, 10 * dotsPerMm, 3, random).values;
  const fine = noiseField(width, height, 0.6 * dotsPerMm, 2, random).values;
  const rough = (index: number): number =>
    0.7 + 0.4 * (coarse[index] ?? 0) + 0.25 * ((fine[index] ?? 0) - 0.5);
  return {
    housing: (index) => paint * rough(index),
    bench: (index) => wood * rough(index),
  };
};
