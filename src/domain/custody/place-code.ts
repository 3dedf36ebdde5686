/** The code of a place or a kit, as its printed label carries it. */
import { z } from 'zod';

export const placeCodeSchema = z.string().regex(/^[A-Z0-9]{1,12}$/);
