/**
 * What holds for due dates while no program was adopted: at least one documented inspection in 12 months (EN 365:2004, as
 * quoted in manufacturers' leaflets), and the standard where a type of use was determined. No program is weaker.
 */
import type { DueProgram } from './due-rules.ts';

export const longestInspectionMonths = 12;

export const tradeProgram: DueProgram = {
  inspectionInterval: {
    months: longestInspectionMonths,
    source: {
      mark: 'published',
      citation:
        'EN 365:2004, periodic examination at least every 12 months, as quoted in manufacturers’ leaflets',
    },
  },
  jurisdictions: [],
  employerRules: [],
  monthEnd: false,
};
