/** What a request came through: a window of the shell, a browser, or the command line. */
import { z } from 'zod';

export const requestFromSchema = z.enum(['window', 'browser', 'terminal']);
export type RequestFrom = z.infer<typeof requestFromSchema>;
