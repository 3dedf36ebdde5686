/** The shape that every event has: its type, and what it says. */
import { z } from 'zod';

export const event = <Type extends string, Shape extends z.ZodRawShape>(type: Type, shape: Shape) =>
  z.object({ type: z.literal(type), ...shape });
