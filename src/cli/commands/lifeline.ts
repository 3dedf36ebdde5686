/** `lifeline`: what every inspection of a device saw along its lifeline, and the trend of its diameter. */
import type { Command } from 'commander';
import { diameterText, type LengthUnit, lengthText } from '../../domain/length.ts';
import type { OutputOf } from '../../station/contract.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { dateText } from '../wording.ts';

export const addLifeline = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('lifeline')
    .argument('<id>', words('help-device-id'))
    .description(words('help-lifeline'))
    .action(async (id: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const lifeline = await call('lifeline.show', { benchId: await deviceMeant(job, call, id) });
        const status = await call('station.status', {});
        const unit = status.state === 'ready' ? status.lengthUnit : 'm';
        const at = (positionM: number) => lengthText(positionM, unit, job.language);
        job.give(lifeline, [
          ...lifeline.inspections.flatMap((inspection) => [
            words('lifeline-inspection', {
              inspection: inspection.inspection,
              date: dateText(inspection.on, job.language),
            }),
            ...inspection.findings.map(
              ({ label, positionM }) => `  ${at(positionM)}  ${label[job.language]}`,
            ),
            ...inspection.readings.map(
              ({ positionM, diameterMm }) =>
                `  ${at(positionM)}  ${diameterText(diameterMm, unit, job.language)}`,
            ),
          ]),
          ...trendLines(lifeline, unit, job),
        ]);
      });
    });
};

const trendLines = (
  { trend, lifelineMinimumDiameterMm: minimum }: OutputOf<'lifeline.show'>,
  unit: LengthUnit,
  { words, language }: Job,
): readonly string[] => {
  if (minimum === undefined) return [words('lifeline-no-minimum')];
  if (trend.kind === 'too few')
    return [words('lifeline-too-few', { count: trend.points.length, needed: trend.needed })];
  const sign = trend.changeMmPerYear < 0 ? '-' : '+';
  return [
    words('lifeline-trend', {
      change: `${sign}${diameterText(Math.abs(trend.changeMmPerYear), unit, language)}`,
      minimum: diameterText(minimum, unit, language),
    }),
  ];
};
