/** `inspection.start`: begins the walk of a device with the current procedure. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideStart } from '../../domain/decide/inspection.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const inspectionStart = defineOperation({
  name: 'inspection.start',
  summary: 'Begins the inspection of a device.',
  kind: 'command',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: async (context, { benchId }) => {
    let number = 0;
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      number = await reader.nextInspectionNumber();
      return decideStart(row.device, number, context.rules.current.reference);
    });
    return isRefusal(result) ? result : showInspection(context, number);
  },
});
