/** A device in one line: bench ID and model. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';

export const deviceWords = ({ benchId, manufacturer, model }: DeviceSummary): string =>
  `${formatBenchId(benchId)} ${manufacturer} ${model}`;
