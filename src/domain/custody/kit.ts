/** A kit: devices that go out together under one name. Each still goes out, or stays, by itself. */
import { z } from 'zod';
import { benchIdSchema } from '../brand.ts';
import { placeCodeSchema } from './place-code.ts';

export const kitSchema = z.object({
  kitId: z.string(),
  name: z.string().trim().min(1).max(80),
  /** On the label of the kit; it is read like the label of a place. */
  code: placeCodeSchema,
  benchIds: z.array(benchIdSchema).min(1).max(50),
});
export type Kit = z.infer<typeof kitSchema>;
