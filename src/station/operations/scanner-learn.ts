/** `scanner.learn`: how the scanner of the station types, from three scans of a known symbol. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { keyboardFaults } from '../../domain/scanner/keystroke.ts';
import { learnScanner, scanSampleSchema } from '../../domain/scanner/learn-scanner.ts';
import { scannerSchema } from '../../domain/scanner/scanner.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const scannerLearn = defineOperation({
  name: 'scanner.learn',
  summary: 'Learns how the scanner types from three scans of a known symbol.',
  kind: 'command',
  access: everyRole,
  input: z.object({ scans: z.array(scanSampleSchema).min(1).max(10) }),
  output: z.object({
    scanner: scannerSchema,
    /** What is wrong with the keyboard, and is put right from now on. */
    fault: z.enum(keyboardFaults).optional(),
  }),
  run: async (context, { scans }) => {
    const learnt = learnScanner(scans);
    if (isRefusal(learnt)) return learnt;
    const { scanner } = learnt;
    const result = await record(context, async () => [{ type: 'scanner.learnt', scanner }]);
    return isRefusal(result) ? result : learnt;
  },
});
