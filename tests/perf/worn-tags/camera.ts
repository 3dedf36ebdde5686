/** What light and camera add to a scene: shadow, glare, blur, motion and noise. */
import type { Picture } from '../../../src/tags/read/picture.ts';
import { blurred, smeared } from './field.ts';
import type { Random } from './random.ts';
import type { Seen } from './view.ts';

export interface Light {
  /** Light on the darkest side as a share of that on the brightest. */
  readonly darkestShare: number;
  /** Strength of the bright band that a lamp makes along the housing, as a share of full white; 0 is none. */
  readonly glare: number;
  /** Luminance of a white tag in full light, 0 to 1. */
  readonly exposure: number;
}

/** Standard deviations from its middle at which the band of glare is past seeing. */
const bandEnd = 6;

/** Light from one side, and a lamp mirrored in a band of about 8 mm along the axis of the housing. */
export const lit = ({ scene, alongMm }: Seen, light: Light, random: Random): Seen => {
  const { width, height, values } = scene;
  const angle = random.between(0, 2 * Math.PI);
  const bandAt = random.between(-45, 45);
  const bandMm = random.between(3, 5);
  const [alongX, alongY] = [Math.cos(angle) / Math.SQRT2, Math.sin(angle) / Math.SQRT2];
  const lit = values.map((value, index) => {
    const x = (index % width) / width - 0.5;
    const y = Math.floor(index / width) / height - 0.5;
    const side = 0.5 + x * alongX + y * alongY;
    const away = ((alongMm[index] ?? Number.NaN) - bandAt) / bandMm;
    const mirrored = Math.abs(away) < bandEnd ? light.glare * Math.exp(-(away ** 2) / 2) : 0;
    return value * light.exposure * (light.darkestShare + (1 - light.darkestShare) * side) + mirrored;
  });
  return { scene: { width, height, values: lit }, alongMm };
};

export interface Camera {
  /** Standard deviation of the blur, in dots of the photograph. */
  readonly defocusDots: number;
  readonly motionDots: number;
  /** Standard deviation of the noise in full light, in steps of 255. */
  readonly noise: number;
}

/** Noise has a part that grows with the root of the light and a part that is always there, in equal shares in full light. */
export const exposed = (
  { scene }: Seen,
  { defocusDots, motionDots, noise }: Camera,
  random: Random,
): Picture => {
  const direction = random.between(0, Math.PI);
  const { width, height, values } = smeared(blurred(scene, defocusDots), motionDots, direction);
  const luminance = new Uint8Array(values.length);
  for (let index = 0; index < values.length; index += 1) {
    const light = Math.min(1, values[index] ?? 0);
    const deviation = noise * Math.sqrt(0.5 + 0.5 * light);
    luminance[index] = Math.min(255, Math.max(0, Math.round(255 * light + deviation * random.normal())));
  }
  return { width, height, luminance };
};
